package tenterbook.recipe.dip;

import tenterbook.measure.NumberWords;
import tenterbook.words.Refusal;

/**
 * Depth of shade after n dips: K/S(n) = c + A (1 − e^(−b n)). Each dip adds the same share of what the cloth can still
 * take up, so the shade levels off. The form is a description that fits dyeing to exhaustion (first-order uptake,
 * common practice), not a law of any vat.
 *
 * @param base c, K/S of the undyed cloth, 0 or more
 * @param rise A, K/S that endless dipping would add, above 0
 * @param rate b, share taken per dip in the limit of small steps, per dip, above 0
 */
public record DipCurve(double base, double rise, double rate) {
    /** @throws IllegalArgumentException if a number is out of its range, NaN or infinite */
    public DipCurve {
        if (!(base >= 0 && rise > 0 && rate > 0) || !Double.isFinite(base + rise + rate)) {
            throw Refusal.of(
                    "recipe.dip-curve",
                    "base",
                    NumberWords.plain(base),
                    "rise",
                    NumberWords.plain(rise),
                    "rate",
                    NumberWords.plain(rate));
        }
    }

    /** K/S after {@code dips}, which may be a fraction; 0 or more. */
    public double at(double dips) {
        return base - rise * Math.expm1(-rate * dips);
    }

    /** The depth that endless dipping approaches and never passes. */
    public double limit() {
        return base + rise;
    }

    /** The dips that give this K/S: 0 at or below {@code base}, infinite at or above {@link #limit()}. */
    public double dipsFor(double ks) {
        if (ks <= base) {
            return 0;
        }
        return ks >= limit() ? Double.POSITIVE_INFINITY : -Math.log1p(-(ks - base) / rise) / rate;
    }

    /** The dips that take a piece from one K/S to another on a curve of this limit and rate; 0 where none are needed. */
    public double dipsBetween(double now, double target) {
        if (target <= now) {
            return 0;
        }
        return target >= limit() ? Double.POSITIVE_INFINITY : Math.log((limit() - now) / (limit() - target)) / rate;
    }

    /** The mean over every whole number of dips in a range: the expected shade of a piece with that count. */
    double mean(DipCount dips) {
        double sum = 0;
        for (int n = dips.low(); n <= dips.high(); n++) {
            sum += at(n);
        }
        return sum / dips.choices();
    }

    /** Variance of the shade due to the range of the count alone; 0 for a counted piece. */
    double vagueness(DipCount dips) {
        double mean = mean(dips);
        double sum = 0;
        for (int n = dips.low(); n <= dips.high(); n++) {
            sum += (at(n) - mean) * (at(n) - mean);
        }
        return sum / dips.choices();
    }
}
