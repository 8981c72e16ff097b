package tenterbook.colour.compare;

/**
 * How alike the images of two neighbouring layers are, once lying as they lay.
 *
 * @param layer the first, by number
 * @param next the second
 * @param correlation of lightness, -1 to 1: 1 the same image; brightness and contrast do not count
 * @param shiftLength how far the second had to be moved along the length to fit, in parts of its length, within ±0.06
 * @param shiftWidth the same across the width
 */
public record LayerSymmetry(int layer, int next, double correlation, double shiftLength, double shiftWidth) {
    /** A common-sense limit and no standard: a weaker correlation leaves more than nine tenths of the variance unexplained. */
    private static final double LEAST_LIKENESS = 0.3;

    /** Whether the two can be said to mirror each other: a correlation of at least 0.3. */
    public boolean mirrors() {
        return correlation >= LEAST_LIKENESS;
    }
}
