package tenterbook.search;

import tenterbook.colour.Ciede2000;
import tenterbook.colour.Lab;

/** Whether a piece has enough of a colour near enough, and how near its nearest is. Holds the last answer; one thread. */
final class ColourMatch {
    private final double L;
    private final double A;
    private final double B;
    private final double C;
    private final double within;
    private final double within2;
    private final double leastShare;
    private final boolean anyWillDo;
    private final ColourBound bound = new ColourBound();
    /** Pieces surely farther than this need no exact distance; falls as nearer ones are found. */
    double competitive = Double.POSITIVE_INFINITY;
    /** ΔE00 of the nearest colour looked at last. */
    double distance;
    /** Index of that colour in the segment's columns. */
    int nearest;
    /** Sum of the known shares within the tolerance; NaN where none is known. */
    double share;

    /** @param anyWillDo whether it is enough to know that a piece matches, without its distance and share */
    ColourMatch(Lab colour, double within, double leastShare, boolean anyWillDo) {
        this.L = colour.lightness();
        this.A = colour.a();
        this.B = colour.b();
        this.C = Math.sqrt(A * A + B * B);
        this.within = within;
        this.within2 = within * within + ColourBound.SLACK;
        this.leastShare = leastShare;
        this.anyWillDo = anyWillDo;
    }

    /** Every colour within the tolerance is found, so that distance and share are whole. */
    boolean whole(Columns columns, int doc) {
        return exact(columns, doc, true);
    }

    /**
     * Whether the piece matches. The distance is infinite where it surely does, is surely above {@link #competitive}, and was
     * not worked out; the share is whole only where the query asks for one.
     */
    boolean matches(Columns columns, int doc) {
        if (leastShare > 0) {
            return exact(columns, doc, true);
        }
        double least2 = Double.POSITIVE_INFINITY;
        boolean certain = false;
        int end = columns.colourStart[doc + 1];
        for (int i = columns.colourStart[doc]; i < end; i++) {
            double l = columns.lightness[i];
            if (tooFarInLightness(l, within2)) {
                continue;
            }
            double l2 = ColourBound.squaredByLightness(L, l);
            if (l2 > within2) {
                continue;
            }
            bound.compare(l2, A, B, C, columns.a[i], columns.b[i], columns.chroma[i]);
            least2 = Math.min(least2, bound.least2);
            certain |= bound.most2 < within2 - 2 * ColourBound.SLACK;
        }
        if (least2 > within2) {
            return false;
        }
        if (certain && (anyWillDo || least2 > competitive * competitive + ColourBound.SLACK)) {
            distance = Double.POSITIVE_INFINITY;
            return true;
        }
        return exact(columns, doc, false);
    }

    /** SL is below 1.75 for every mean lightness from 0 to 100, so a colour this far off needs no division. */
    private boolean tooFarInLightness(double l, double limit2) {
        double apart = l - L;
        return apart * apart > limit2 * 3.0625 && l >= 0 && l <= 100 && L >= 0 && L <= 100;
    }

    private boolean exact(Columns columns, int doc, boolean every) {
        double best = Double.POSITIVE_INFINITY;
        double limit2 = within2;
        double sum = Double.NaN;
        int end = columns.colourStart[doc + 1];
        for (int i = columns.colourStart[doc]; i < end; i++) {
            double l = columns.lightness[i];
            if (tooFarInLightness(l, limit2)) {
                continue;
            }
            double l2 = ColourBound.squaredByLightness(L, l);
            if (l2 > limit2) {
                continue;
            }
            bound.compare(l2, A, B, C, columns.a[i], columns.b[i], columns.chroma[i]);
            if (bound.least2 > limit2) {
                continue;
            }
            double difference = Ciede2000.difference(L, A, B, l, columns.a[i], columns.b[i]);
            if (difference > within) {
                continue;
            }
            if (!Double.isNaN(columns.share[i])) {
                sum = Double.isNaN(sum) ? columns.share[i] : sum + columns.share[i];
            }
            if (difference < best) {
                best = difference;
                nearest = i;
                limit2 = every ? limit2 : Math.min(limit2, best * best + ColourBound.SLACK);
            }
        }
        distance = best;
        share = sum;
        return best <= within && (leastShare == 0 || sum >= leastShare - 1e-6);
    }
}
