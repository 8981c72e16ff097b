package tenterbook.search;

import java.util.Arrays;
import org.apache.lucene.util.FixedBitSet;

/**
 * Goes through a segment's palettes from near to far by a proven bound and compares only those that may be among the nearest.
 *
 * <p>The measure is that of {@link PaletteDistance}: half of Σ wᵢ·minⱼ d(aᵢ,cⱼ) + Σ pⱼ·minᵢ d(aᵢ,cⱼ). Every part of the tree of
 * colours has a proven least distance to each asked colour ({@link BoxBound}). Replacing d(aᵢ,cⱼ) by the least of the part that cⱼ
 * lies in can only make the sum smaller, because both minima, and both sums with weights of 0 and more, grow with every d. So:
 *
 * <ol>
 *   <li>Parts are bounded from the top down; one that is wholly farther than {@link #FAR} is not taken apart, and its bound
 *       holds for every leaf of it. This gives a table: leaf by asked colour.
 *   <li>Each palette gets its bound from the table, without a colour being compared, and stands in the line by it.
 *   <li>From the front of the line on, a palette's minima are replaced one by one by those of close bounds ({@link CloseBound}),
 *       and the sum can only grow; once it exceeds the greatest of the wanted distances the palette is surely farther. What is left
 *       is compared. When a bound in the line exceeds that distance, all the rest is farther.
 * </ol>
 *
 * <p>Bounds in the table are counted in parts of 1/{@value #UNIT}, rounded down, four to a long, 15 bits in each 16. One
 * thread.
 */
final class NearestPalettes {
    /** Takes one palette with its distance. */
    @FunctionalInterface
    interface Sink {
        void take(int doc, double distance);
    }

    private static final double FAR = 13;
    private static final int UNIT = 512;
    /** More than floats lose in adding up numbers below 64 · {@value #UNIT}, and what rounding down to a unit may add again. */
    private static final int ROUNDED = 2;

    private static final int MOST = 0x7fff;
    private static final long GUARDS = 0x8000800080008000L;
    private static final long ALL_MOST = ~GUARDS;

    /** Units to a place in the line; within one the order is that of the documents. */
    private static final int PLACE = 16;

    private static final int PLACES = 40 * UNIT / PLACE;

    private final ColourTree tree;
    private final PaletteColumns palettes;
    private final PaletteDistance asked;
    private final int n;
    private final CloseBound[] close;
    private final float[] weights;
    /** So many longs hold the bounds of one leaf. */
    private final int words;
    /** Least distance of each leaf to each asked colour, leaf after leaf. */
    private final long[] least;
    /** Least distance of each leaf to any asked colour. */
    private final short[] leastOfAll;

    private double[] compared = new double[64];

    NearestPalettes(ColourTree tree, PaletteDistance asked) {
        this.tree = tree;
        this.palettes = tree.palettes();
        this.asked = asked;
        this.n = asked.size();
        this.words = (n + 3) / 4;
        this.close = new CloseBound[n];
        this.weights = new float[4 * words];
        this.least = new long[tree.firstLeaf * words];
        this.leastOfAll = new short[tree.firstLeaf];
        Arrays.fill(least, ALL_MOST);
        Arrays.fill(leastOfAll, (short) MOST);
        for (int i = 0; i < n; i++) {
            close[i] = asked.close(i);
            weights[i] = asked.weight(i);
            bound(asked.bound(i), i, 1, 0, tree.size());
        }
    }

    private void bound(BoxBound bound, int i, int part, int from, int to) {
        if (from == to) {
            return;
        }
        bound.box(tree.boxes, 6 * part, tree.corners[part], FAR * FAR);
        if (bound.least2 > FAR * FAR || part >= tree.firstLeaf) {
            fill(i, part, (int) Math.min(MOST, UNIT * Math.sqrt(Math.max(0, bound.least2 - ColourBound.SLACK))));
            return;
        }
        // Two halvings at once: the box between is seldom far where the greater one is not.
        int middle = ColourTree.middle(from, to);
        if (2 * part >= tree.firstLeaf) {
            bound(bound, i, 2 * part, from, middle);
            bound(bound, i, 2 * part + 1, middle, to);
            return;
        }
        int first = ColourTree.middle(from, middle);
        int last = ColourTree.middle(middle, to);
        bound(bound, i, 4 * part, from, first);
        bound(bound, i, 4 * part + 1, first, middle);
        bound(bound, i, 4 * part + 2, middle, last);
        bound(bound, i, 4 * part + 3, last, to);
    }

    private void fill(int i, int part, int value) {
        int from = part;
        int leaves = 1;
        while (from < tree.firstLeaf) {
            from *= 2;
            leaves *= 2;
        }
        int shift = 16 * (i & 3);
        long keep = ~(0xffffL << shift);
        for (int leaf = from - tree.firstLeaf; leaves > 0; leaves--, leaf++) {
            int at = leaf * words + (i >> 2);
            least[at] = least[at] & keep | (long) value << shift;
            leastOfAll[leaf] = (short) Math.min(leastOfAll[leaf], value);
        }
    }

    private int least(int leaf, int i) {
        return (int) (least[leaf * words + (i >> 2)] >>> 16 * (i & 3)) & MOST;
    }

    /** The smaller one in each of four places of 15 bits (the guard above each shows where the first is not smaller). */
    static long smaller(long one, long other) {
        long notSmaller = ((one | GUARDS) - other) & GUARDS;
        long take = notSmaller - (notSmaller >>> 15);
        return other & take | one & ~take;
    }

    /**
     * Compares as few as it takes.
     *
     * @param documents each with at least one colour that counts
     * @param wanted told of every distance found that may be among the wanted; sets the limit
     * @param sink gets every document that may be among the wanted, in no promised order
     */
    void compare(FixedBitSet documents, NearestDistances wanted, Sink sink) {
        int count = documents.cardinality();
        int[] docs = new int[count];
        int[] bounds = new int[count];
        int[] ends = new int[PLACES + 1];
        int size = 0;
        for (int doc = ColourSearch.next(documents, 0); doc >= 0; doc = ColourSearch.next(documents, doc + 1)) {
            docs[size] = doc;
            bounds[size] = bound(doc);
            ends[place(bounds[size++]) + 1]++;
        }
        for (int place = 1; place <= PLACES; place++) {
            ends[place] += ends[place - 1];
        }
        int[] line = new int[count];
        for (int at = 0; at < count; at++) {
            line[ends[place(bounds[at])]++] = at;
        }
        for (int at : line) {
            double limit = wanted.worst();
            if ((double) place(bounds[at]) * PLACE > limit * UNIT) {
                return;
            }
            if ((double) bounds[at] <= limit * UNIT && near(docs[at], bounds[at], limit)) {
                double distance = asked.to(tree, docs[at], Double.POSITIVE_INFINITY);
                if (wanted.takes(distance)) {
                    sink.take(docs[at], distance);
                }
            }
        }
    }

    private static int place(int bound) {
        return Math.min(PLACES - 1, bound / PLACE);
    }

    /** At most the distance, in units. */
    private int bound(int doc) {
        int from = tree.start[doc];
        int to = tree.start[doc + 1];
        int[] leaf = palettes.leaf;
        float[] weight = palettes.weight;
        float sum = 0;
        for (int at = from; at < to; at++) {
            sum += weight[at] * leastOfAll[leaf[at]];
        }
        for (int word = 0; word < words; word++) {
            long nearest = ALL_MOST;
            for (int at = from; at < to; at++) {
                nearest = weight[at] > 0 ? smaller(nearest, least[leaf[at] * words + word]) : nearest;
            }
            int i = 4 * word;
            sum += weights[i] * (int) (nearest & MOST)
                    + weights[i + 1] * (int) (nearest >>> 16 & MOST)
                    + weights[i + 2] * (int) (nearest >>> 32 & MOST)
                    + weights[i + 3] * (int) (nearest >>> 48);
        }
        return Math.max(0, (int) (sum / 2) - ROUNDED);
    }

    /** False where the distance surely exceeds the limit: minima are brought closer one after the other, until that is seen. */
    private boolean near(int doc, int bound, double limit) {
        int from = tree.start[doc];
        int to = tree.start[doc + 1];
        if (compared.length < n * (to - from)) {
            compared = new double[2 * n * (to - from)];
        }
        Arrays.fill(compared, 0, n * (to - from), -1);
        double twice = 2.0 * bound / UNIT;
        double most = 2 * limit + ColourBound.SLACK;
        for (int i = 0; i < n && twice <= most; i++) {
            twice += weights[i] * gainOfAsked(i, from, to);
        }
        for (int at = from; at < to && twice <= most; at++) {
            if (palettes.weight[at] > 0) {
                twice += palettes.weight[at] * gainOfOther(at, from);
            }
        }
        return twice <= most;
    }

    /** How much more than by the table an asked colour is surely away from its nearest. */
    private double gainOfAsked(int i, int from, int to) {
        int known = MOST;
        for (int at = from; at < to; at++) {
            known = palettes.weight[at] > 0 ? Math.min(known, least(palettes.leaf[at], i)) : known;
        }
        double best = Double.POSITIVE_INFINITY;
        // Those of the nearest part first: they mostly leave nothing to compare of the others.
        for (int turn = 0; turn < 2; turn++) {
            for (int at = from; at < to; at++) {
                int its = least(palettes.leaf[at], i);
                if (palettes.weight[at] > 0 && (its == known) == (turn == 0) && its < best * UNIT) {
                    best = Math.min(best, compared(i, at, from));
                }
            }
        }
        return best - (double) known / UNIT;
    }

    private double gainOfOther(int at, int from) {
        int leaf = palettes.leaf[at];
        int known = leastOfAll[leaf];
        double best = Double.POSITIVE_INFINITY;
        for (int turn = 0; turn < 2; turn++) {
            for (int i = 0; i < n; i++) {
                int its = least(leaf, i);
                if ((its == known) == (turn == 0) && its < best * UNIT) {
                    best = Math.min(best, compared(i, at, from));
                }
            }
        }
        return best - (double) known / UNIT;
    }

    private double compared(int i, int at, int from) {
        int place = (at - from) * n + i;
        if (compared[place] < 0) {
            double[] lab = palettes.lab;
            double bound = close[i].least(lab[3 * at], lab[3 * at + 1], lab[3 * at + 2]);
            compared[place] = Math.max(bound, (double) least(palettes.leaf[at], i) / UNIT);
        }
        return compared[place];
    }
}
