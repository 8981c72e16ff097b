package tenterbook.search.colour;

import org.apache.lucene.util.ArrayUtil;
import org.apache.lucene.util.FixedBitSet;
import tenterbook.colour.space.Lab;

/**
 * One colour asked of one segment's colours: which documents have one within a tolerance, and which have the nearest. Both exactly
 * as comparing every colour by the whole formula gives them. Parts of the tree that are surely outside are not entered, those surely
 * inside are taken whole, and of the others only colours are compared that the close bound leaves in doubt. One thread.
 */
public final class ColourRangeSearch {
    private final ColourTree tree;
    private final BoxBound box;
    private final CloseBound close;

    public ColourRangeSearch(ColourTree tree, Lab asked) {
        this.tree = tree;
        this.box = new BoxBound(asked.lightness(), asked.a(), asked.b());
        this.close = new CloseBound(asked.lightness(), asked.a(), asked.b());
    }

    /**
     * @param leastShare least sum of the known shares within the tolerance; 0 asks for none
     * @param documents of the segment
     */
    public FixedBitSet within(double tolerance, double leastShare, int documents) {
        Within within =
                new Within(tolerance, new FixedBitSet(documents), leastShare > 0 ? new double[documents] : null);
        if (tree.size() > 0) {
            within.enter(1, 0, tree.size());
            within.border();
        }
        if (leastShare > 0) {
            for (int doc = 0; doc < documents; doc++) {
                if (within.sums[doc] < leastShare - ColourMatch.SHARE_SLACK) {
                    within.found.clear(doc);
                }
            }
        }
        return within.found;
    }

    /** @param sums of the known shares within the tolerance, by document; null where they are not asked for */
    private final class Within {
        final double tolerance;
        final double tolerance2;
        final FixedBitSet found;
        final double[] sums;
        /** From and to of colours that a bound of their leaf leaves in doubt. */
        int[] border = new int[64];

        int borders;

        Within(double tolerance, FixedBitSet found, double[] sums) {
            this.tolerance = tolerance;
            this.tolerance2 = tolerance * tolerance;
            this.found = found;
            this.sums = sums;
        }

        void enter(int part, int from, int to) {
            box.bound(tree, part, tolerance2 + BoxBound.SLACK);
            if (box.least2() > tolerance2 + BoxBound.SLACK) {
                return;
            }
            if (box.most2() < tolerance2 - BoxBound.SLACK) {
                for (int i = from; i < to; i++) {
                    take(i);
                }
            } else if (part >= tree.firstLeaf) {
                border = ArrayUtil.grow(border, borders + 2);
                border[borders++] = from;
                border[borders++] = to;
            } else {
                int middle = ColourTree.middle(from, to);
                enter(2 * part, from, middle);
                enter(2 * part + 1, middle, to);
            }
        }

        /** Comes last: many of its documents have been taken by then, and need not be compared. */
        void border() {
            for (int at = 0; at < borders; at += 2) {
                for (int i = border[at]; i < border[at + 1]; i++) {
                    if ((sums != null || !found.get(tree.doc[i])) && isWithin(i)) {
                        take(i);
                    }
                }
            }
        }

        private void take(int i) {
            found.set(tree.doc[i]);
            if (sums != null && !Double.isNaN(tree.share[i])) {
                sums[tree.doc[i]] += tree.share[i];
            }
        }

        private boolean isWithin(int i) {
            close.compare(tree.lightness[i], tree.a[i], tree.b[i]);
            return close.least2() <= tolerance2 + BoxBound.SLACK
                    && (close.most2() < tolerance2 - BoxBound.SLACK
                            || close.exact(tree.lightness[i], tree.a[i], tree.b[i]) <= tolerance);
        }
    }

    /**
     * Offers every document that may be among the wanted with the distance of its nearest colour, some also with that of another.
     *
     * @param documents which of the segment are asked for
     * @param docBase of the segment
     */
    public void nearest(FixedBitSet documents, int docBase, NearestDistances nearest) {
        if (tree.size() > 0) {
            nearest(1, 0, documents, docBase, nearest);
        }
    }

    private void nearest(int part, double least2, FixedBitSet documents, int docBase, NearestDistances nearest) {
        if (least2 > nearest.worst2()) {
            return;
        }
        if (part < tree.firstLeaf) {
            double one = least2(2 * part, nearest);
            double other = least2(2 * part + 1, nearest);
            int nearer = one <= other ? 2 * part : 2 * part + 1;
            nearest(nearer, Math.min(one, other), documents, docBase, nearest);
            nearest(nearer ^ 1, Math.max(one, other), documents, docBase, nearest);
            return;
        }
        for (int i = tree.begin(part); i < tree.end(part); i++) {
            if (documents.get(tree.doc[i])) {
                close.compare(tree.lightness[i], tree.a[i], tree.b[i]);
                if (close.least2() <= nearest.worst2()) {
                    nearest.offer(docBase + tree.doc[i], close.exact(tree.lightness[i], tree.a[i], tree.b[i]));
                }
            }
        }
    }

    private double least2(int part, NearestDistances nearest) {
        box.bound(tree, part, nearest.worst2());
        return box.least2();
    }
}
