package tenterbook.search;

import java.util.Arrays;
import java.util.stream.IntStream;
import tenterbook.colour.Ciede2000;

/**
 * How far two palettes are from each other: each colour of one is compared with its nearest in the other (CIEDE2000), averaged by
 * the area it covers; the same from the other side; and the mean of both. 0 for equal palettes, the same either way round.
 *
 * <p>Areas are the known shares, as parts of their sum. Colours without a share lie on areas counted already and are left out,
 * unless no colour of the piece has one; then all weigh the same. Two palettes with a great and a small field exchanged are near
 * each other here: areas weigh what is compared, they do not have to agree.
 *
 * <p>Our own measure, not a standard. One thread.
 */
final class PaletteDistance {
    /** L, a, b, weight of each colour, greatest weight first. */
    private final double[] asked;

    private final BoxBound[] bounds;
    private double[] other = new double[0];
    private int others;
    private double[] nearest = new double[8];

    /** @param palette as {@link #of} gives it; not empty */
    PaletteDistance(double[] palette) {
        this.asked = palette;
        this.bounds = IntStream.range(0, palette.length / 4)
                .mapToObj(i -> new BoxBound(palette[4 * i], palette[4 * i + 1], palette[4 * i + 2]))
                .toArray(BoxBound[]::new);
    }

    /** The same for another thread. */
    PaletteDistance another() {
        return new PaletteDistance(asked);
    }

    int size() {
        return bounds.length;
    }

    /** For boxes: one of its own, since a bound of a box narrows those of single colours that follow. */
    BoxBound bound(int colour) {
        return new BoxBound(asked[4 * colour], asked[4 * colour + 1], asked[4 * colour + 2]);
    }

    CloseBound close(int colour) {
        return new CloseBound(asked[4 * colour], asked[4 * colour + 1], asked[4 * colour + 2]);
    }

    float weight(int colour) {
        return (float) asked[4 * colour + 3];
    }

    /** L, a, b, weight of each colour of a document that counts, greatest weight first; empty where it has no colour. */
    static double[] of(ColourTree tree, int doc) {
        boolean known = false;
        double sum = 0;
        for (int at = tree.start[doc]; at < tree.start[doc + 1]; at++) {
            double share = tree.share[tree.at[at]];
            known |= share > 0;
            sum += share > 0 ? share : 0;
        }
        double whole = known ? sum : tree.start[doc + 1] - tree.start[doc];
        boolean counted = known;
        return IntStream.range(tree.start[doc], tree.start[doc + 1])
                .map(at -> tree.at[at])
                .filter(i -> !counted || tree.share[i] > 0)
                .mapToObj(i ->
                        new double[] {tree.lightness[i], tree.a[i], tree.b[i], (counted ? tree.share[i] : 1) / whole})
                .sorted((one, two) -> Double.compare(two[3], one[3]))
                .flatMapToDouble(Arrays::stream)
                .toArray();
    }

    /** The distance to a document's palette; infinite where it has no colour or is surely farther than {@code limit}. */
    double to(ColourTree tree, int doc, double limit) {
        read(tree, doc);
        if (others == 0 || surelyFarther(limit)) {
            return Double.POSITIVE_INFINITY;
        }
        return exact();
    }

    private void read(ColourTree tree, int doc) {
        int from = tree.start[doc];
        int to = tree.start[doc + 1];
        if (other.length < 4 * (to - from)) {
            other = new double[8 * (to - from)];
            nearest = new double[2 * (to - from)];
        }
        double sum = 0;
        for (int at = from; at < to; at++) {
            double share = tree.share[tree.at[at]];
            sum += share > 0 ? share : 0;
        }
        others = 0;
        for (int at = from; at < to; at++) {
            int i = tree.at[at];
            if (sum == 0 || tree.share[i] > 0) {
                other[4 * others] = tree.lightness[i];
                other[4 * others + 1] = tree.a[i];
                other[4 * others + 2] = tree.b[i];
                other[4 * others++ + 3] = sum == 0 ? 1.0 / (to - from) : tree.share[i] / sum;
            }
        }
    }

    private boolean surelyFarther(double limit) {
        if (limit == Double.POSITIVE_INFINITY) {
            return false;
        }
        double least = 0;
        Arrays.fill(nearest, 0, others, Double.POSITIVE_INFINITY);
        for (int i = 0; i < bounds.length; i++) {
            double best2 = Double.POSITIVE_INFINITY;
            for (int j = 0; j < others; j++) {
                // Lightness alone is bound enough where it is farther than what is known already.
                double known = Math.max(best2, nearest[j]);
                bounds[i].colour(other[4 * j], other[4 * j + 1], other[4 * j + 2], known);
                best2 = Math.min(best2, bounds[i].least2);
                nearest[j] = Math.min(nearest[j], bounds[i].least2);
            }
            least += asked[4 * i + 3] * Math.sqrt(Math.max(0, best2 - ColourBound.SLACK));
            if (least / 2 > limit + ColourBound.SLACK) {
                return true;
            }
        }
        for (int j = 0; j < others; j++) {
            least += other[4 * j + 3] * Math.sqrt(Math.max(0, nearest[j] - ColourBound.SLACK));
        }
        return least / 2 > limit + ColourBound.SLACK;
    }

    private double exact() {
        double there = 0;
        Arrays.fill(nearest, 0, others, Double.POSITIVE_INFINITY);
        for (int i = 0; i < bounds.length; i++) {
            double best = Double.POSITIVE_INFINITY;
            for (int j = 0; j < others; j++) {
                double difference = Ciede2000.difference(
                        asked[4 * i],
                        asked[4 * i + 1],
                        asked[4 * i + 2],
                        other[4 * j],
                        other[4 * j + 1],
                        other[4 * j + 2]);
                best = Math.min(best, difference);
                nearest[j] = Math.min(nearest[j], difference);
            }
            there += asked[4 * i + 3] * best;
        }
        double back = 0;
        for (int j = 0; j < others; j++) {
            back += other[4 * j + 3] * nearest[j];
        }
        return (there + back) / 2;
    }
}
