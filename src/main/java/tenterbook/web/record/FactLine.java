package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Basis;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.words.Worded;

/**
 * A line of a record as a page shows it.
 *
 * @param label what it is
 * @param text what is known, or 'not recorded'
 * @param also the same in other units, and how it is known; may be empty
 */
public record FactLine(String label, String text, String also) {
    /** What is shown where nothing is known. */
    public static String notRecorded() {
        return w("measure.not-recorded");
    }

    public FactLine(String label, String text) {
        this(label, text, "");
    }

    public static String or(String text) {
        return text.isBlank() ? notRecorded() : text;
    }

    /** The word of a choice. */
    public static String or(@Nullable Worded choice) {
        return choice == null ? notRecorded() : w(choice);
    }

    public boolean recorded() {
        return !text.equals(notRecorded());
    }

    /** As entered, with both systems of units beside it. */
    public static FactLine of(String label, Quantity quantity) {
        return new FactLine(label, w(QuantityWords.asEntered(quantity)), also(quantity));
    }

    /** As in '180 cm · 70.9 in, measured'; empty where there is nothing to add. */
    public static String also(Quantity quantity) {
        if (!quantity.known()) {
            return "";
        }
        StringJoiner text = new StringJoiner(" · ");
        String entered = plain(quantity.entered());
        QuantityWords.inMetric(quantity)
                .map(there -> w(QuantityWords.understood(there)))
                .filter(metric -> !plain(metric).equals(entered))
                .ifPresent(text::add);
        QuantityWords.inUs(quantity)
                .map(there -> w(QuantityWords.understood(there)))
                .filter(us -> !plain(us).equals(entered))
                .ifPresent(text::add);
        String basis = quantity.basis() == Basis.UNKNOWN ? "" : w(quantity.basis());
        if (text.length() == 0) {
            return basis;
        }
        return basis.isEmpty() ? text.toString() : text + ", " + basis;
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ').strip();
    }
}
