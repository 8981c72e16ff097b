package tenterbook.search.colour;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.util.FixedBitSet;

/**
 * The palettes of a segment that are nearest to one, found by a proven bound of each, with as few compared as it takes.
 *
 * <p>The measure is that of {@link PaletteDistance}: half of Σ wᵢ·minⱼ d(aᵢ,cⱼ) + Σ pⱼ·minᵢ d(aᵢ,cⱼ). Every leaf of the tree of
 * colours has a proven least distance to each asked colour ({@link BoxBound}). Replacing d(aᵢ,cⱼ) by that of the leaf that cⱼ lies
 * in can only make the sum smaller, because both minima, and both sums with weights of 0 and more, grow with every d. So a table of
 * leaves by asked colours gives each palette's bound without a colour being compared. Palettes are then gone through from near to far
 * by their bounds, in steps, until all the rest is farther than what is wanted.
 */
public final class NearestPalettes {
    /** A part of the tree farther than this from a colour is not taken apart: its bound holds for all leaves of it. */
    private static final double FAR = 15;
    /** Bounds are counted in parts of 1/{@value #UNIT}, rounded down: whole numbers compare in half the time. */
    private static final int UNIT = 1024;
    /** No palette's bound is greater, give or take a last step. */
    private static final int STEPS = (int) FAR + 1;
    /** So many documents are worth a second processor. */
    private static final int LARGE = 8192;
    /** Documents of one task. */
    private static final int TASK = 1024;

    private final ColourTree tree;
    private final PaletteDistance asked;
    private final int n;
    /** Least distance to each asked colour, leaf after leaf. */
    private final int[] least;

    public NearestPalettes(ColourTree tree, PaletteDistance asked) {
        this.tree = tree;
        this.asked = asked;
        this.n = asked.size();
        this.least = new int[tree.firstLeaf * n];
        if (tree.size() > 0) {
            tasks(n, tree.start.length).forEach(i -> table(asked.bound(i), i, 1));
        }
    }

    /** Numbers of tasks, from 0; they share nothing that they write. */
    private static IntStream tasks(int count, int documents) {
        IntStream tasks = IntStream.range(0, count);
        return documents >= LARGE ? tasks.parallel() : tasks;
    }

    private void table(BoxBound bound, int i, int part) {
        bound.bound(tree, part, FAR * FAR);
        if (part < tree.firstLeaf && bound.least2() <= FAR * FAR) {
            table(bound, i, 2 * part);
            table(bound, i, 2 * part + 1);
            return;
        }
        int value = (int) (UNIT * Math.sqrt(Math.max(0, bound.least2() - BoxBound.SLACK)));
        int first = part;
        int leaves = 1;
        for (; first < tree.firstLeaf; first *= 2) {
            leaves *= 2;
        }
        for (int leaf = first - tree.firstLeaf; leaves > 0; leaf++, leaves--) {
            least[leaf * n + i] = value;
        }
    }

    /**
     * Offers every palette that may be among the wanted.
     *
     * @param documents each with at least one colour
     * @param docBase of the segment
     */
    public void nearest(FixedBitSet documents, int docBase, NearestDistances nearest) {
        int[] docs = new int[documents.cardinality()];
        int size = 0;
        for (int doc = next(documents, 0); doc >= 0; doc = next(documents, doc + 1)) {
            docs[size++] = doc;
        }
        double[] bounds = new double[docs.length];
        int tasks = (docs.length + TASK - 1) / TASK;
        tasks(tasks, docs.length).forEach(task -> {
            int[] row = new int[n];
            for (int at = task * TASK; at < Math.min(docs.length, (task + 1) * TASK); at++) {
                bounds[at] = bound(docs[at], row);
            }
        });
        for (int step = 0; step <= nearest.worst() && step <= STEPS; step++) {
            double from = step;
            double to = step < STEPS ? step + 1 : Double.POSITIVE_INFINITY;
            tasks(tasks, docs.length).forEach(task -> {
                PaletteDistance distance = null;
                for (int at = task * TASK; at < Math.min(docs.length, (task + 1) * TASK); at++) {
                    if (bounds[at] >= from && bounds[at] < to && bounds[at] <= nearest.worst()) {
                        distance = distance == null ? asked.another() : distance;
                        double its = distance.to(tree, docs[at], nearest.worst());
                        if (its <= nearest.worst()) {
                            nearest.offer(docBase + docs[at], its);
                        }
                    }
                }
            });
        }
    }

    /** At most the distance. */
    private double bound(int doc, int[] nearest) {
        Arrays.fill(nearest, Integer.MAX_VALUE);
        double sum = 0;
        for (int at = tree.start[doc]; at < tree.start[doc + 1]; at++) {
            double weight = tree.weight[at];
            if (weight > 0) {
                int row = tree.leaf[at] * n;
                int any = Integer.MAX_VALUE;
                for (int i = 0; i < n; i++) {
                    any = Math.min(any, least[row + i]);
                    nearest[i] = Math.min(nearest[i], least[row + i]);
                }
                sum += weight * any;
            }
        }
        for (int i = 0; i < n; i++) {
            sum += asked.weight(i) * nearest[i];
        }
        return sum / (2 * UNIT) - BoxBound.SLACK;
    }

    /** The next document of a set from {@code from} on; -1 where there is none. */
    public static int next(FixedBitSet documents, int from) {
        if (from >= documents.length()) {
            return -1;
        }
        int doc = documents.nextSetBit(from);
        return doc == DocIdSetIterator.NO_MORE_DOCS ? -1 : doc;
    }
}
