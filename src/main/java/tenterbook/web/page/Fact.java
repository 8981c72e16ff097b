package tenterbook.web.page;

import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;

/**
 * A line of a record as a page shows it.
 *
 * @param label what it is
 * @param text what is known, or 'not recorded'
 * @param also the same in other units, and how it is known; may be empty
 */
public record Fact(String label, String text, String also) {
    public static final String NOT_RECORDED = "not recorded";

    public Fact(String label, String text) {
        this(label, text, "");
    }

    public static String or(String text) {
        return text.isBlank() ? NOT_RECORDED : text;
    }

    public boolean recorded() {
        return !text.equals(NOT_RECORDED);
    }

    /** As entered, with both systems of units beside it. */
    public static Fact of(String label, Quantity quantity) {
        return new Fact(label, QuantityWords.entered(quantity), also(quantity));
    }

    /** As in '180 cm · 70.9 in, measured'; empty where there is nothing to add. */
    public static String also(Quantity quantity) {
        if (!quantity.known()) {
            return "";
        }
        StringBuilder text = new StringBuilder();
        QuantityWords.metric(quantity).ifPresent(text::append);
        QuantityWords.us(quantity)
                .ifPresent(us -> text.append(text.isEmpty() ? "" : " · ").append(us));
        if (quantity.basis() != tenterbook.measure.Basis.UNKNOWN) {
            text.append(text.isEmpty() ? "" : ", ").append(quantity.basis());
        }
        return text.toString();
    }
}
