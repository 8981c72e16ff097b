package tenterbook.search;

import tenterbook.colour.Ciede2000;
import tenterbook.colour.Lab;

/** How near and how much of one piece is to one colour, by the whole formula. Holds the last answer; one thread. */
final class ColourMatch {
    /** What adding up shares may lose. */
    static final double SHARE_SLACK = 1e-6;

    private final Lab asked;
    private final double within;
    private final BoxBound bound;
    /** ΔE00 of the nearest colour; infinite where the piece has none, or surely none nearer than the limit given. */
    double distance;
    /** Index of that colour in the tree. */
    int nearest;
    /** Sum of the known shares within the tolerance; NaN where none is known. */
    double share;

    ColourMatch(Lab asked, double within) {
        this.asked = asked;
        this.within = within;
        this.bound = new BoxBound(asked.lightness(), asked.a(), asked.b());
    }

    /** Compares every colour of the document. */
    void whole(ColourTree tree, int doc) {
        distance = Double.POSITIVE_INFINITY;
        share = Double.NaN;
        for (int at = tree.start[doc]; at < tree.start[doc + 1]; at++) {
            int i = tree.at[at];
            double difference = exact(tree, i);
            if (difference <= within && !Double.isNaN(tree.share[i])) {
                share = Double.isNaN(share) ? tree.share[i] : share + tree.share[i];
            }
            if (difference < distance) {
                distance = difference;
                nearest = i;
            }
        }
    }

    /** Only the distance, and only where it is not above {@code limit}. */
    void nearest(ColourTree tree, int doc, double limit) {
        distance = Double.POSITIVE_INFINITY;
        double limit2 = limit * limit + ColourBound.SLACK;
        for (int at = tree.start[doc]; at < tree.start[doc + 1]; at++) {
            int i = tree.at[at];
            bound.colour(tree.lightness[i], tree.a[i], tree.b[i], tree.chroma[i], limit2);
            if (bound.least2 <= limit2) {
                double difference = exact(tree, i);
                if (difference < distance) {
                    distance = difference;
                    nearest = i;
                    limit2 = Math.min(limit2, difference * difference + ColourBound.SLACK);
                }
            }
        }
    }

    private double exact(ColourTree tree, int i) {
        return Ciede2000.difference(asked.lightness(), asked.a(), asked.b(), tree.lightness[i], tree.a[i], tree.b[i]);
    }
}
