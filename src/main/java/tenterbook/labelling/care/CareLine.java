package tenterbook.labelling.care;

import java.util.Locale;
import tenterbook.labelling.rule.Rule;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/**
 * One care instruction or warning, exactly as printed.
 *
 * @param about the treatment
 * @param evidence the test or tests in words, or that there is none
 */
public record CareLine(About about, String text, String evidence, Rule rule) {
    /** The subject of a line, in the order of ISO 3758; warnings last. */
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
