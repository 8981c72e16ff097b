package tenterbook.search;

import java.util.Arrays;
import org.apache.lucene.util.FixedBitSet;
import tenterbook.colour.Ciede2000;
import tenterbook.colour.Lab;

/**
 * The documents of one segment with a colour within a tolerance of the one asked for: exactly those that comparing every colour
 * by the whole formula gives. Parts of the tree that are surely outside are not entered, those surely inside are taken whole, and
 * only colours near the border are compared.
 */
final class ColourReach {
    private final ColourTree tree;
    private final BoxBound bound;
    private final Lab asked;
    private final double within;
    private final double within2;
    private final double[] sums;
    private final FixedBitSet found;
    private double[] border = new double[6 * 64];
    private int borders;
    /** Exact distances worked out; for the benchmark and tests of how much is left out. */
    int compared;

    private ColourReach(ColourTree tree, Lab asked, double within, boolean shares, int documents) {
        this.tree = tree;
        this.asked = asked;
        this.bound = new BoxBound(asked.lightness(), asked.a(), asked.b());
        this.within = within;
        this.within2 = within * within;
        this.found = new FixedBitSet(documents);
        this.sums = shares ? new double[documents] : null;
    }

    /**
     * @param leastShare least sum of the known shares within the tolerance; 0 asks for none
     * @param documents of the segment
     */
    static FixedBitSet of(ColourTree tree, Lab asked, double within, double leastShare, int documents) {
        ColourReach reach = new ColourReach(tree, asked, within, leastShare > 0, documents);
        if (tree.size() > 0) {
            reach.enter(1, 0, tree.size());
            reach.border();
        }
        if (leastShare > 0) {
            reach.enough(leastShare);
        }
        return reach.found;
    }

    private void enter(int part, int from, int to) {
        if (from == to) {
            return;
        }
        bound.box(tree.boxes, 6 * part, tree.corners[part], within2 + ColourBound.SLACK);
        if (bound.least2 > within2 + ColourBound.SLACK) {
            return;
        }
        if (bound.most2 < within2 - ColourBound.SLACK) {
            for (int i = from; i < to; i++) {
                take(i);
            }
        } else if (part >= tree.firstLeaf) {
            postpone(from, to);
        } else {
            int middle = ColourTree.middle(from, to);
            enter(2 * part, from, middle);
            enter(2 * part + 1, middle, to);
        }
    }

    private void take(int colour) {
        int doc = tree.doc[colour];
        found.set(doc);
        if (sums != null && !Double.isNaN(tree.share[colour])) {
            sums[doc] += tree.share[colour];
        }
    }

    /** The border comes last: many of its documents have been taken by then. */
    private void postpone(int from, int to) {
        if (borders + 6 > border.length) {
            border = Arrays.copyOf(border, 2 * border.length);
        }
        border[borders++] = from;
        border[borders++] = to;
        border[borders++] = bound.leastT;
        border[borders++] = bound.mostT;
        border[borders++] = bound.leastTurn;
        border[borders++] = bound.mostTurn;
    }

    private void border() {
        double limit2 = within2 + ColourBound.SLACK;
        for (int at = 0; at < borders; at += 6) {
            bound.leastT = border[at + 2];
            bound.mostT = border[at + 3];
            bound.leastTurn = border[at + 4];
            bound.mostTurn = border[at + 5];
            int to = (int) border[at + 1];
            for (int i = (int) border[at]; i < to; i++) {
                if (sums == null && found.get(tree.doc[i])) {
                    continue;
                }
                bound.colour(tree.lightness[i], tree.a[i], tree.b[i], limit2);
                if (bound.least2 <= limit2 && (bound.most2 < within2 - ColourBound.SLACK || isWithin(i))) {
                    take(i);
                }
            }
        }
    }

    private boolean isWithin(int i) {
        compared++;
        return Ciede2000.difference(asked.lightness(), asked.a(), asked.b(), tree.lightness[i], tree.a[i], tree.b[i])
                <= within;
    }

    private void enough(double leastShare) {
        for (int doc = found.nextSetBit(0); doc < found.length(); ) {
            if (!(sums[doc] >= leastShare - ColourMatch.SHARE_SLACK)) {
                found.clear(doc);
            }
            doc = doc + 1 < found.length() ? found.nextSetBit(doc + 1) : Integer.MAX_VALUE;
        }
    }
}
