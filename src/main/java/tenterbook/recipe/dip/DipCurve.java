package tenterbook.recipe.dip;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import tenterbook.measure.NumberWords;
import tenterbook.words.Refusal;

/**
 * The form in which depth of shade grows with the dips n, up to a constant factor: 1 − e^(−(b n)^p). With p = 1 each dip adds the
 * same share of what the cloth can still take up (first-order uptake, common practice); below 1 the first dips count for more,
 * above 1 for less. Where b n is small it is the power n^p, a straight line for p = 1. A description, not a law of any vat.
 *
 * @param rate b, per dip, above 0
 * @param power p, above 0
 */
public record DipCurve(double rate, double power) {
    /** @throws IllegalArgumentException if a number is not above 0, or infinite */
    public DipCurve {
        if (!(rate > 0 && power > 0) || !Double.isFinite(rate + power)) {
            throw Refusal.of("recipe.dip-curve", "rate", NumberWords.plain(rate), "power", NumberWords.plain(power));
        }
    }

    /** Natural logarithm of the form after {@code dips}, above 0 and possibly a fraction: negative, growing towards 0. */
    public double at(double dips) {
        return Math.log(-Math.expm1(-Math.pow(rate * dips, power)));
    }

    /** The mean over every whole number of dips in a range; an undyed cloth, which has no logarithm, is left out. */
    double mean(DipCount dips) {
        return average(dips, this::at);
    }

    /** Variance due to the range of the count alone; 0 for a counted piece. */
    double vagueness(DipCount dips) {
        if (dips.low() == dips.high()) {
            return 0;
        }
        double mean = mean(dips);
        return average(dips, n -> (at(n) - mean) * (at(n) - mean));
    }

    private static double average(DipCount dips, DoubleUnaryOperator figure) {
        return IntStream.rangeClosed(Math.max(1, dips.low()), dips.high())
                .mapToDouble(n -> figure.applyAsDouble(n))
                .average()
                .orElseThrow();
    }
}
