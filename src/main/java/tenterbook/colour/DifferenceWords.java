package tenterbook.colour;

/**
 * A CIEDE2000 distance in plain words. The thresholds are common practice, not a standard: what an eye notices depends
 * on light, surface and gap between the cloths.
 */
public final class DifferenceWords {
    private DifferenceWords() {}

    /**
     * @param dE00 CIEDE2000 difference, 0 or more
     * @return words that follow "these two": for instance "cannot be told apart"
     * @throws IllegalArgumentException if negative, NaN or infinite
     */
    public static String of(double dE00) {
        if (!(dE00 >= 0) || Double.isInfinite(dE00)) {
            throw new IllegalArgumentException("A colour difference is 0 or more and finite; found: " + dE00);
        }
        if (dE00 < 0.5) {
            return "cannot be told apart";
        }
        if (dE00 < 1) {
            return "hardly noticeable, even side by side";
        }
        if (dE00 < 2) {
            return "just noticeable side by side";
        }
        if (dE00 < 3.5) {
            return "noticeable at a glance side by side";
        }
        if (dE00 < 5) {
            return "clearly two shades of one colour";
        }
        if (dE00 < 10) {
            return "related, but plainly different";
        }
        return "different colours";
    }
}
