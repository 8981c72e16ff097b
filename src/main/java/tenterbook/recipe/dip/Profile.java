package tenterbook.recipe.dip;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleFunction;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.jspecify.annotations.Nullable;

/**
 * Least squares at a fixed rate b. The curve is then a straight line in g(n) = 1 − e^(−b n), so base and rise follow without
 * search, and the search is over b alone (variable projection, Golub and Pereyra 1973), by Brent's method from several starts.
 */
final class Profile {
    /** Below this share of bending within the dips seen, a curve cannot be distinguished from a straight line. */
    private static final double LEAST_BEND = 0.02;
    /** e^−7 = 0.1 %: all taken up within the first dips seen. */
    private static final double MOST_BEND = 7;

    private static final int STEPS = 120;
    private static final int STARTS = 3;

    private final Sample sample;
    final double leastRate;
    final double mostRate;

    Profile(Sample sample) {
        this.sample = sample;
        leastRate = LEAST_BEND / sample.mostDips();
        mostRate = MOST_BEND / sample.fewestDips();
    }

    /**
     * The line at one rate: minimum of w (ks − c − A g)² over any sign, and the normal matrix there.
     *
     * @param squares the minimum
     * @param n Σw
     * @param g Σwg
     * @param gg Σwg²
     */
    record Line(double rate, double base, double rise, double squares, double n, double g, double gg) {
        /** With the base held at 0 where it would be negative. */
        Line held() {
            if (base >= 0 || gg == 0) {
                return this;
            }
            double shift = -base;
            double slide = -g * shift / gg;
            return new Line(rate, 0, rise + slide, squares + shift * shift * (n - g * g / gg), n, g, gg);
        }
    }

    Line at(double rate) {
        double n = 0;
        double g = 0;
        double gg = 0;
        double y = 0;
        double gy = 0;
        double[] taken = new double[sample.size()];
        DipCurve unit = new DipCurve(0, 1, rate);
        for (int i = 0; i < taken.length; i++) {
            taken[i] = unit.mean(sample.dips(i));
            double w = sample.weights[i];
            n += w;
            g += w * taken[i];
            gg += w * taken[i] * taken[i];
            y += w * sample.ks(i);
            gy += w * taken[i] * sample.ks(i);
        }
        double spread = gg - g * g / n;
        double rise = spread > 0 ? (gy - g * y / n) / spread : 0;
        double base = (y - rise * g) / n;
        double squares = 0;
        for (int i = 0; i < taken.length; i++) {
            double miss = sample.ks(i) - base - rise * taken[i];
            squares += sample.weights[i] * miss * miss;
        }
        return new Line(rate, base, rise, squares, n, g, gg);
    }

    /** Rates from the straightest to the most bent curve, in equal ratios. */
    double[] rates() {
        double[] rates = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            rates[i] = leastRate * Math.pow(mostRate / leastRate, i / (double) STEPS);
        }
        return rates;
    }

    /** The curve of least squares with base 0 or more, or null where no curve that rises fits better than a level. */
    @Nullable
    DipCurve best() {
        Line best = least(rate -> at(rate).held());
        return best.rise > 0 ? new DipCurve(Math.max(best.base, 0), best.rise, best.rate) : null;
    }

    /** The least squares of a curve whose base may be negative. */
    double freeSquares() {
        return least(this::at).squares;
    }

    /** Evaluates all rates, then minimises from each local minimum; the best line. */
    private Line least(DoubleFunction<Line> at) {
        double[] rates = rates();
        List<Line> walk = Arrays.stream(rates).mapToObj(at).toList();
        List<Integer> hollows = new ArrayList<>();
        for (int i = 0; i < rates.length; i++) {
            double here = walk.get(i).squares;
            if ((i == 0 || here <= walk.get(i - 1).squares)
                    && (i == rates.length - 1 || here < walk.get(i + 1).squares)) {
                hollows.add(i);
            }
        }
        hollows.sort(Comparator.comparingDouble(i -> walk.get(i).squares));
        Line least = walk.get(hollows.get(0));
        for (int i : hollows.subList(0, Math.min(STARTS, hollows.size()))) {
            double low = Math.log(rates[Math.max(0, i - 1)]);
            double high = Math.log(rates[Math.min(STEPS, i + 1)]);
            double bottom = new BrentOptimizer(1e-10, 1e-12)
                    .optimize(
                            new MaxEval(500),
                            new UnivariateObjectiveFunction(log -> at.apply(Math.exp(log)).squares),
                            GoalType.MINIMIZE,
                            new SearchInterval(low, high))
                    .getPoint();
            Line line = at.apply(Math.exp(bottom));
            if (line.squares < least.squares) {
                least = line;
            }
        }
        return least;
    }
}
