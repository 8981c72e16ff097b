package tenterbook.search;

import java.util.Arrays;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
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
 * <p>Bounds in the table are counted in parts of 1/{@value #UNIT}, rounded down, four to a long, 15 bits in each 16. Of a large
 * segment every step is divided into many small tasks, so that a processor that comes late still finds some.
 */
final class NearestPalettes {
    /** Which distances are wanted; safe for many threads. */
    interface Wanted {
        /** None greater than this is wanted; may fall while palettes are compared. */
        double worst();

        /** Whether this one may be wanted. */
        boolean takes(double distance);
    }

    /** Takes one palette with its distance. */
    @FunctionalInterface
    interface Sink {
        void take(int doc, double distance);
    }

    private static final double FAR = 15;
    private static final int UNIT = 512;
    /** More than floats lose in adding up numbers below 64 · {@value #UNIT}, and what rounding down to a unit may add again. */
    private static final int ROUNDED = 2;

    private static final int MOST = 0x7fff;
    private static final long GUARDS = 0x8000800080008000L;
    private static final long ALL_MOST = ~GUARDS;

    /** Units to a place in the line; within one the order is that of the documents. */
    private static final int PLACE = 16;

    private static final int PLACES = 40 * UNIT / PLACE;

    /** So many colours and more are worth a second processor. */
    private static final int LARGE = 50_000;
    /** Of the tree; those of one depth. */
    private static final int PARTS = 64;
    /** Documents bounded by one task, and looked at more closely. */
    private static final int BOUNDED = 2048;

    private static final int COMPARED = 64;

    private final ColourTree tree;
    private final PaletteColumns palettes;
    private final PaletteDistance asked;
    private final int n;
    private final float[] weights;
    /** So many longs hold the bounds of one leaf. */
    private final int words;
    /** Least distance of each leaf to each asked colour, leaf after leaf. */
    private final long[] least;
    /** Least distance of each leaf to any asked colour. */
    private final short[] leastOfAll;

    private final boolean large;

    NearestPalettes(ColourTree tree, PaletteDistance asked) {
        this.tree = tree;
        this.palettes = tree.palettes();
        this.asked = asked;
        this.n = asked.size();
        this.words = (n + 3) / 4;
        this.weights = new float[4 * words];
        this.least = new long[tree.firstLeaf * words];
        this.leastOfAll = new short[tree.firstLeaf];
        this.large = tree.size() >= LARGE && tree.firstLeaf >= PARTS;
        Arrays.fill(least, ALL_MOST);
        Arrays.fill(leastOfAll, (short) MOST);
        for (int i = 0; i < n; i++) {
            weights[i] = asked.weight(i);
        }
        int first = large ? PARTS : 1;
        tasks(first).forEach(task -> table(first + task));
    }

    /** Numbers of tasks, from 0; they share nothing that they write. */
    private IntStream tasks(int count) {
        IntStream tasks = IntStream.range(0, count);
        return large ? tasks.parallel() : tasks;
    }

    /** All asked colours against a part of the tree. */
    private void table(int part) {
        for (int i = 0; i < n; i++) {
            table(asked.bound(i), i, part, tree.begin(part), tree.end(part));
        }
    }

    private void table(BoxBound bound, int i, int part, int from, int to) {
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
            table(bound, i, 2 * part, from, middle);
            table(bound, i, 2 * part + 1, middle, to);
            return;
        }
        int first = ColourTree.middle(from, middle);
        int last = ColourTree.middle(middle, to);
        table(bound, i, 4 * part, from, first);
        table(bound, i, 4 * part + 1, first, middle);
        table(bound, i, 4 * part + 2, middle, last);
        table(bound, i, 4 * part + 3, last, to);
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
     * @param wanted asked about every distance found that may be among the wanted
     * @param sink gets every document that may be among the wanted, in no promised order
     */
    void compare(FixedBitSet documents, Wanted wanted, Sink sink) {
        int count = documents.cardinality();
        int[] docs = new int[count];
        int size = 0;
        for (int doc = ColourSearch.next(documents, 0); doc >= 0; doc = ColourSearch.next(documents, doc + 1)) {
            docs[size++] = doc;
        }
        int[] bounds = new int[count];
        tasks((count + BOUNDED - 1) / BOUNDED).forEach(task -> {
            for (int at = task * BOUNDED; at < Math.min(count, (task + 1) * BOUNDED); at++) {
                bounds[at] = bound(docs[at]);
            }
        });
        int[] line = line(bounds);
        AtomicInteger next = new AtomicInteger();
        tasks(large ? ForkJoinPool.getCommonPoolParallelism() + 1 : 1).forEach(task -> {
            Closely closely = new Closely();
            int from = next.getAndAdd(COMPARED);
            while (from < count && closely.compare(docs, bounds, line, from, wanted, sink)) {
                from = next.getAndAdd(COMPARED);
            }
        });
    }

    /** Those of the documents that are no farther than a limit. */
    FixedBitSet within(FixedBitSet documents, double limit) {
        FixedBitSet found = new FixedBitSet(documents.length());
        Wanted near = new Wanted() {
            @Override
            public double worst() {
                return limit;
            }

            @Override
            public boolean takes(double distance) {
                return distance <= limit;
            }
        };
        compare(documents, near, (doc, distance) -> found.set(doc));
        return found;
    }

    /** Where the bounds stand, least first. */
    private static int[] line(int[] bounds) {
        int[] ends = new int[PLACES + 1];
        for (int bound : bounds) {
            ends[place(bound) + 1]++;
        }
        for (int place = 1; place <= PLACES; place++) {
            ends[place] += ends[place - 1];
        }
        int[] line = new int[bounds.length];
        for (int at = 0; at < bounds.length; at++) {
            line[ends[place(bounds[at])]++] = at;
        }
        return line;
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
        // Eight asked colours at once, which is every palette of one photograph.
        long nearest = ALL_MOST;
        long others = ALL_MOST;
        int second = words > 1 ? 1 : 0;
        for (int at = from; at < to; at++) {
            int row = leaf[at] * words;
            if (weight[at] > 0) {
                nearest = smaller(nearest, least[row]);
                others = smaller(others, least[row + second]);
                sum += weight[at] * leastOfAll[leaf[at]];
            }
        }
        sum += weighed(nearest, 0) + (second > 0 ? weighed(others, 4) : 0);
        for (int word = 2; word < words; word++) {
            nearest = ALL_MOST;
            for (int at = from; at < to; at++) {
                nearest = weight[at] > 0 ? smaller(nearest, least[leaf[at] * words + word]) : nearest;
            }
            sum += weighed(nearest, 4 * word);
        }
        return Math.max(0, (int) (sum / 2) - ROUNDED);
    }

    /** Four bounds of a long, each with the weight of its asked colour, the first being {@code i}. */
    private float weighed(long four, int i) {
        return weights[i] * (int) (four & MOST)
                + weights[i + 1] * (int) (four >>> 16 & MOST)
                + weights[i + 2] * (int) (four >>> 32 & MOST)
                + weights[i + 3] * (int) (four >>> 48);
    }

    /** Goes along the line; one for each thread. */
    private final class Closely {
        private final PaletteDistance exact = asked.another();
        private final CloseBound[] close =
                IntStream.range(0, n).mapToObj(asked::close).toArray(CloseBound[]::new);
        /** Of the document looked at: bounds from {@link #least}, row after row, and the close ones worked out; −1 if not. */
        private int[] table = new int[64];

        private double[] compared = new double[64];

        /** The next few of the line; false where all the rest is surely farther than what is wanted. */
        boolean compare(int[] docs, int[] bounds, int[] line, int from, Wanted wanted, Sink sink) {
            for (int place = from; place < Math.min(line.length, from + COMPARED); place++) {
                int at = line[place];
                double limit = wanted.worst();
                if ((double) place(bounds[at]) * PLACE > limit * UNIT) {
                    return false;
                }
                if ((double) bounds[at] <= limit * UNIT && near(docs[at], bounds[at], limit)) {
                    double distance = exact.to(tree, docs[at], Double.POSITIVE_INFINITY);
                    if (wanted.takes(distance)) {
                        synchronized (sink) {
                            sink.take(docs[at], distance);
                        }
                    }
                }
            }
            return true;
        }

        /** False where the distance surely exceeds the limit: minima are brought closer one after the other, until that is seen. */
        private boolean near(int doc, int bound, double limit) {
            int from = tree.start[doc];
            int colours = tree.start[doc + 1] - from;
            unpack(from, colours);
            double twice = 2.0 * bound / UNIT;
            // The weights are floats: an equal distance must not be lost to their rounding.
            double most = 2 * limit * (1 + 1e-6) + ColourBound.SLACK;
            for (int i = 0; i < n && twice <= most; i++) {
                twice += weights[i] * gainOfAsked(i, from, colours);
            }
            for (int k = 0; k < colours && twice <= most; k++) {
                if (palettes.weight[from + k] > 0) {
                    twice += palettes.weight[from + k] * gainOfOther(k, from);
                }
            }
            return twice <= most;
        }

        /** The bounds in the table of a document's colours, and nothing compared yet. */
        private void unpack(int from, int colours) {
            int row = 4 * words;
            if (table.length < row * colours) {
                table = new int[2 * row * colours];
                compared = new double[2 * row * colours];
            }
            Arrays.fill(compared, 0, row * colours, -1);
            for (int k = 0, put = 0; k < colours; k++) {
                int at = palettes.leaf[from + k] * words;
                for (int word = 0; word < words; word++, put += 4) {
                    long four = least[at + word];
                    table[put] = (int) (four & MOST);
                    table[put + 1] = (int) (four >>> 16 & MOST);
                    table[put + 2] = (int) (four >>> 32 & MOST);
                    table[put + 3] = (int) (four >>> 48);
                }
            }
        }

        /** How much more than by the table an asked colour is surely away from its nearest. */
        private double gainOfAsked(int i, int from, int colours) {
            int known = Integer.MAX_VALUE;
            int first = 0;
            for (int k = 0, at = i; k < colours; k++, at += 4 * words) {
                if (table[at] < known && palettes.weight[from + k] > 0) {
                    known = table[at];
                    first = k;
                }
            }
            // The one of the nearest part first: it mostly leaves nothing to compare of the others.
            double best = compared(first, i, from);
            for (int k = 0, at = i; k < colours; k++, at += 4 * words) {
                if (k != first && table[at] < best * UNIT && palettes.weight[from + k] > 0) {
                    best = Math.min(best, compared(k, i, from));
                }
            }
            return best - (double) known / UNIT;
        }

        /** The same for a colour of the document. */
        private double gainOfOther(int k, int from) {
            int known = Integer.MAX_VALUE;
            int first = 0;
            int row = 4 * words * k;
            for (int i = 0; i < n; i++) {
                if (table[row + i] < known) {
                    known = table[row + i];
                    first = i;
                }
            }
            double best = compared(k, first, from);
            for (int i = 0; i < n; i++) {
                if (i != first && table[row + i] < best * UNIT) {
                    best = Math.min(best, compared(k, i, from));
                }
            }
            return best - (double) known / UNIT;
        }

        private double compared(int k, int i, int from) {
            int place = 4 * words * k + i;
            if (compared[place] < 0) {
                double[] lab = palettes.lab;
                int at = 3 * (from + k);
                compared[place] =
                        Math.max(close[i].least(lab[at], lab[at + 1], lab[at + 2]), (double) table[place] / UNIT);
            }
            return compared[place];
        }
    }
}
