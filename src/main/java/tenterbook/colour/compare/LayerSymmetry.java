package tenterbook.colour.compare;

import tenterbook.measure.Threshold;

/**
 * Similarity of two neighbouring layers' images, oriented as in the stack.
 *
 * @param layer the first, by number
 * @param next the second
 * @param correlation of lightness, -1 to 1, at the shift that fits best: 1 the same image, whatever its brightness and contrast
 */
public record LayerSymmetry(int layer, int next, double correlation) {
    /** Our own limit: a weaker correlation leaves more than nine tenths of the variance unexplained. */
    private static final double LEAST_LIKENESS = Threshold.number("layers-mirror");

    /** Whether the two mirror each other: a correlation of at least {@code layers-mirror}. */
    public boolean mirrors() {
        return correlation >= LEAST_LIKENESS;
    }
}
