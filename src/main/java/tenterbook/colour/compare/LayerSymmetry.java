package tenterbook.colour.compare;

/**
 * Similarity of two neighbouring layers' images, oriented as in the stack.
 *
 * @param layer the first, by number
 * @param next the second
 * @param correlation of lightness, -1 to 1: 1 the same image, whatever its brightness and contrast
 * @param shiftLength shift of the second along the length that fits best, in parts of its length, within ±0.06
 * @param shiftWidth the same across the width
 */
public record LayerSymmetry(int layer, int next, double correlation, double shiftLength, double shiftWidth) {
    /** Our own limit: a weaker correlation leaves more than nine tenths of the variance unexplained. */
    private static final double LEAST_LIKENESS = 0.3;

    /** Whether the two mirror each other: a correlation of at least 0.3. */
    public boolean mirrors() {
        return correlation >= LEAST_LIKENESS;
    }
}
