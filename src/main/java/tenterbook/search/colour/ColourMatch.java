package tenterbook.search.colour;

import tenterbook.colour.space.Lab;

/** How near and how much of one piece is to one colour, by the whole formula. Holds the last answer; one thread. */
public final class ColourMatch {
    /** What adding up shares may lose. */
    public static final double SHARE_SLACK = 1e-6;

    private final double within;
    private final CloseBound close;
    /** ΔE00 of the nearest colour; infinite where the piece has none, or surely none nearer than the limit given. */
    public double distance;
    /** Index of that colour in the tree. */
    public int nearest;
    /** Sum of the known shares within the tolerance; NaN where none is known. */
    public double share;

    public ColourMatch(Lab asked, double within) {
        this.within = within;
        this.close = new CloseBound(asked.lightness(), asked.a(), asked.b());
    }

    /** Compares every colour of the document. */
    public void whole(ColourTree tree, int doc) {
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
    public void nearest(ColourTree tree, int doc, double limit) {
        distance = Double.POSITIVE_INFINITY;
        double limit2 = limit * limit + BoxBound.SLACK;
        for (int at = tree.start[doc]; at < tree.start[doc + 1]; at++) {
            int i = tree.at[at];
            close.compare(tree.lightness[i], tree.a[i], tree.b[i]);
            if (close.least2() <= limit2) {
                double difference = exact(tree, i);
                if (difference < distance) {
                    distance = difference;
                    nearest = i;
                    limit2 = Math.min(limit2, difference * difference + BoxBound.SLACK);
                }
            }
        }
    }

    private double exact(ColourTree tree, int i) {
        return close.exact(tree.lightness[i], tree.a[i], tree.b[i]);
    }
}
