package tenterbook.colour.space;

import tenterbook.words.Message;

/**
 * A CIEDE2000 distance in plain words. The thresholds are common practice, not a standard: what the eye notices depends on
 * light, surface and the gap between the cloths.
 */
public final class DifferenceWords {
    private DifferenceWords() {}

    /**
     * @param dE00 CIEDE2000 difference, 0 or more
     * @return words that follow "these two": for instance "cannot be told apart"
     * @throws IllegalStateException if negative, NaN or infinite
     */
    public static Message of(double dE00) {
        if (!(dE00 >= 0) || Double.isInfinite(dE00)) {
            throw new IllegalStateException("A colour difference is 0 or more and finite; found: " + dE00);
        }
        if (dE00 < 0.5) {
            return Message.of("colour.difference.none");
        }
        if (dE00 < 1) {
            return Message.of("colour.difference.hardly");
        }
        if (dE00 < 2) {
            return Message.of("colour.difference.just");
        }
        if (dE00 < 3.5) {
            return Message.of("colour.difference.glance");
        }
        if (dE00 < 5) {
            return Message.of("colour.difference.shades");
        }
        if (dE00 < 10) {
            return Message.of("colour.difference.related");
        }
        return Message.of("colour.difference.different");
    }
}
