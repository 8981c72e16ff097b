package tenterbook.search.colour;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * How far two palettes are from each other: each colour of one is compared with its nearest in the other (CIEDE2000), averaged by
 * the area it covers; the same from the other side; and the mean of both. 0 for equal palettes, the same either way round.
 *
 * <p>Areas are the known shares, as parts of their sum. Colours without a share lie on areas counted already and are left out,
 * unless no colour of the piece has one; then all weigh the same ({@link ColourTree#weight}). Two palettes with a great and a small
 * field exchanged are near each other here: areas weigh what is compared, they do not have to agree.
 *
 * <p>Our own measure, not a standard. One thread.
 */
public final class PaletteDistance {
    /** L, a, b, weight of each colour, greatest weight first. */
    private final double[] asked;

    private final CloseBound[] close;
    private double[] nearest = new double[8];

    /** @param palette as {@link #of} gives it; not empty */
    public PaletteDistance(double[] palette) {
        this.asked = palette;
        this.close = IntStream.range(0, palette.length / 4)
                .mapToObj(i -> new CloseBound(palette[4 * i], palette[4 * i + 1], palette[4 * i + 2]))
                .toArray(CloseBound[]::new);
    }

    /** The same for another thread. */
    public PaletteDistance another() {
        return new PaletteDistance(asked);
    }

    int size() {
        return close.length;
    }

    /** A bound of boxes for one of the colours. */
    BoxBound bound(int colour) {
        return new BoxBound(asked[4 * colour], asked[4 * colour + 1], asked[4 * colour + 2]);
    }

    double weight(int colour) {
        return asked[4 * colour + 3];
    }

    /** L, a, b, weight of each colour of a document that counts, greatest weight first; empty where it has no colour. */
    public static double[] of(ColourTree tree, int doc) {
        return IntStream.range(tree.start[doc], tree.start[doc + 1])
                .filter(at -> tree.weight[at] > 0)
                .mapToObj(at -> {
                    int i = tree.at[at];
                    return new double[] {tree.lightness[i], tree.a[i], tree.b[i], tree.weight[at]};
                })
                .sorted((one, two) -> Double.compare(two[3], one[3]))
                .flatMapToDouble(Arrays::stream)
                .toArray();
    }

    /** The distance to a document's palette; infinite where it has no colour or is farther than {@code limit}. */
    public double to(ColourTree tree, int doc, double limit) {
        if (tree.start[doc] == tree.start[doc + 1]
                || limit < Double.POSITIVE_INFINITY && mean(tree, doc, limit, false) > limit) {
            return Double.POSITIVE_INFINITY;
        }
        return mean(tree, doc, limit, true);
    }

    /** By the formula or, not exactly, by the bound, which can only make it smaller; infinite where it exceeds the limit. */
    private double mean(ColourTree tree, int doc, double limit, boolean exactly) {
        int from = tree.start[doc];
        int to = tree.start[doc + 1];
        nearest = nearest.length < to - from ? new double[2 * (to - from)] : nearest;
        Arrays.fill(nearest, 0, to - from, Double.POSITIVE_INFINITY);
        double twice = limit * 2 * (1 + 1e-9);
        double there = 0;
        for (int i = 0; i < close.length; i++) {
            double best = Double.POSITIVE_INFINITY;
            for (int at = from; at < to; at++) {
                if (tree.weight[at] > 0) {
                    int j = tree.at[at];
                    double difference = exactly
                            ? close[i].exact(tree.lightness[j], tree.a[j], tree.b[j])
                            : close[i].least(tree.lightness[j], tree.a[j], tree.b[j]);
                    best = Math.min(best, difference);
                    nearest[at - from] = Math.min(nearest[at - from], difference);
                }
            }
            there += weight(i) * best;
            if (there > twice) {
                return Double.POSITIVE_INFINITY;
            }
        }
        double back = 0;
        for (int at = from; at < to; at++) {
            back += tree.weight[at] > 0 ? tree.weight[at] * nearest[at - from] : 0;
        }
        return (there + back) / 2;
    }
}
