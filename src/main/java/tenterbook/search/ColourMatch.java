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
        return matches(columns, doc, true);
    }

    /** As {@link #whole}, but the share is only computed where the query asks for one. */
    boolean matches(Columns columns, int doc) {
        return matches(columns, doc, leastShare > 0);
    }

    private boolean matches(Columns columns, int doc, boolean every) {
        double best = Double.POSITIVE_INFINITY;
        double limit2 = within2;
        double sum = Double.NaN;
        int end = columns.colourStart[doc + 1];
        for (int i = columns.colourStart[doc]; i < end; i++) {
            double l = columns.lightness[i];
            double apart = l - L;
            // S_L is below 1.75 for every mean lightness from 0 to 100, so a colour this far off needs no division.
            if (apart * apart > limit2 * 3.0625 && l >= 0 && l <= 100 && L >= 0 && L <= 100) {
                continue;
            }
            if (ColourBound.squared(L, A, B, C, l, columns.a[i], columns.b[i], columns.chroma[i]) > limit2) {
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
                if (!every) {
                    if (anyWillDo) {
                        break;
                    }
                    limit2 = Math.min(limit2, best * best + ColourBound.SLACK);
                }
            }
        }
        distance = best;
        share = sum;
        return best <= within && (leastShare == 0 || sum >= leastShare - 1e-6);
    }
}
