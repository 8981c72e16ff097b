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
    private final Lab asked;
    private final double within;
    private final double within2;
    private final BoxBound bound;
    private final CloseBound close;
    private final double[] sums;
    private final FixedBitSet found;
    /** From and to of colours to be looked at, and what their box leaves of T, and at most of the turn. */
    private double[] border = new double[5 * 64];

    private int borders;
    private int[] open = new int[0];
    private double[] least2 = new double[0];
    private double[] most2 = new double[0];

    private ColourReach(ColourTree tree, Lab asked, double within, boolean shares, int documents) {
        this.tree = tree;
        this.asked = asked;
        this.within = within;
        this.within2 = within * within;
        this.bound = new BoxBound(asked.lightness(), asked.a(), asked.b());
        this.close = new CloseBound(asked.lightness(), asked.a(), asked.b());
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
            // The border comes last: many of its documents have been taken by then.
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
            if (2 * part >= tree.firstLeaf) {
                enter(2 * part, from, middle);
                enter(2 * part + 1, middle, to);
                return;
            }
            // Two halvings at once: the box between is seldom wholly in or out where the greater one is not.
            int first = ColourTree.middle(from, middle);
            int last = ColourTree.middle(middle, to);
            enter(4 * part, from, first);
            enter(4 * part + 1, first, middle);
            enter(4 * part + 2, middle, last);
            enter(4 * part + 3, last, to);
        }
    }

    private void take(int colour) {
        int doc = tree.doc[colour];
        found.set(doc);
        if (sums != null && !Double.isNaN(tree.share[colour])) {
            sums[doc] += tree.share[colour];
        }
    }

    private void postpone(int from, int to) {
        if (borders + 5 > border.length) {
            border = Arrays.copyOf(border, 2 * border.length);
        }
        border[borders++] = from;
        border[borders++] = to;
        border[borders++] = bound.hue.leastT;
        border[borders++] = bound.hue.mostT;
        border[borders++] = bound.hue.mostTurn;
    }

    private void border() {
        for (int at = 0; at < borders; at += 5) {
            bound.hue.leastT = border[at + 2];
            bound.hue.mostT = border[at + 3];
            bound.hue.mostTurn = border[at + 4];
            look((int) border[at], (int) border[at + 1]);
        }
    }

    /** Without a branch until the bounds are told: which way one goes here nobody can foresee, the processor least of all. */
    private void look(int from, int to) {
        if (least2.length < to - from) {
            open = new int[to - from];
            least2 = new double[to - from];
            most2 = new double[to - from];
        }
        int opens = 0;
        long[] known = found.getBits();
        for (int i = from; i < to; i++) {
            int doc = tree.doc[i];
            open[opens] = i;
            opens += sums != null ? 1 : (int) (~known[doc >> 6] >>> doc & 1);
        }
        if (!bound.farFromBlue()) {
            for (int k = 0; k < opens; k++) {
                if (isWithin(open[k])) {
                    take(open[k]);
                }
            }
            return;
        }
        bound.colours(tree, open, opens, least2, most2);
        for (int k = 0; k < opens; k++) {
            if (least2[k] <= within2 + ColourBound.SLACK
                    && (most2[k] < within2 - ColourBound.SLACK || isWithin(open[k]))) {
                take(open[k]);
            }
        }
    }

    private boolean isWithin(int i) {
        close.compare(tree.lightness[i], tree.a[i], tree.b[i]);
        if (close.least2 > within2 + ColourBound.SLACK) {
            return false;
        }
        return close.most2 < within2 - ColourBound.SLACK
                || Ciede2000.difference(
                                asked.lightness(), asked.a(), asked.b(), tree.lightness[i], tree.a[i], tree.b[i])
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
