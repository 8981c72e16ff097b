package tenterbook.labelling.care;

import java.util.Locale;
import tenterbook.labelling.rule.Rule;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/**
 * One care instruction or warning, exactly as printed.
 *
 * @param about the treatment it speaks of
 * @param evidence the test or tests it rests on, in words; says so where there is none
 */
public record CareLine(About about, String text, String evidence, Rule rule) {
    /** What a line speaks of, in the order of ISO 3758; words that name no treatment last. */
    public enum About implements Worded {
        WASHING,
        BLEACHING,
        DRYING,
        IRONING,
        PROFESSIONAL_CARE,
        WARNING;

        @Override
        public Message word() {
            return Message.of(
                    "care.treatment." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
    }
}
