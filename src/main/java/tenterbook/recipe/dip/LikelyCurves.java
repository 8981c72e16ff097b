package tenterbook.recipe.dip;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.distribution.continuous.FDistribution;
import tenterbook.colour.space.Interval;

/**
 * Every curve whose squares stay within the 95 % mark: squares ≤ least + s² F(0.95; 1, n−3), where s² is the scatter about the
 * fit whose base is left free. The least and greatest value of any figure over these curves are its profile-likelihood
 * interval. Where the base is near 0, its lower bound, one tail is cut off and the intervals hold the true value somewhat more
 * often than 95 %.
 *
 * <p>At a fixed rate the set is an ellipse of base and rise; sampled at sixty rates with forty-eight points each, cut where the
 * base would be negative.
 *
 * @see "Bates and Watts 1988, Nonlinear Regression Analysis and Its Applications, chapter 6 (profile t and likelihood regions);
 *     from memory"
 */
final class LikelyCurves implements Plausible {
    private static final double SURE = 0.95;
    private static final int ELLIPSES = 60;
    private static final int ROUND = 48;

    private final List<DipCurve> curves = new ArrayList<>();
    private final boolean endless;

    LikelyCurves(Sample sample, DipCurve best) {
        Profile profile = new Profile(sample);
        int spare = sample.size() - 3;
        double mark = sample.squares(best)
                + profile.freeSquares() / spare * new FDistribution(1, spare).inverseCumulativeProbability(SURE);
        curves.add(best);
        double low = best.rate();
        double high = best.rate();
        double[] rates = profile.rates();
        for (double rate : rates) {
            if (profile.at(rate).held().squares() <= mark) {
                low = Math.min(low, rate);
                high = Math.max(high, rate);
            }
        }
        endless = low <= profile.leastRate;
        double step = rates[1] / rates[0];
        double least = endless ? low : edge(profile, mark, low, low / step);
        double most = high >= profile.mostRate ? high : edge(profile, mark, high, high * step);
        for (int i = 0; i <= ELLIPSES && most > least; i++) {
            ellipse(profile.at(least * Math.pow(most / least, i / (double) ELLIPSES)), mark);
        }
    }

    private static double edge(Profile profile, double mark, double inside, double outside) {
        double in = inside;
        double out = outside;
        for (int i = 0; i < 30; i++) {
            double middle = Math.sqrt(in * out);
            if (profile.at(middle).held().squares() <= mark) {
                in = middle;
            } else {
                out = middle;
            }
        }
        return in;
    }

    private void ellipse(Profile.Line line, double mark) {
        double room = mark - line.squares();
        double spread = line.gg() - line.g() * line.g() / line.n();
        if (room < 0 || spread <= 0) {
            return;
        }
        // The normal matrix is (n g; g gg): with A = rise ± √(room / spread) sin, c follows the ridge c = c₀ − g/n ΔA.
        for (int i = 0; i < ROUND; i++) {
            double angle = 2 * Math.PI * i / ROUND;
            double rise = Math.sqrt(room / spread) * Math.sin(angle);
            double base = Math.sqrt(room / line.n()) * Math.cos(angle) - line.g() / line.n() * rise;
            add(line.base() + base, line.rise() + rise, line.rate());
        }
        // Where the ellipse crosses base 0: gg ΔA² + 2 g Δc ΔA + n Δc² = room, with Δc = −base.
        double down = -line.base();
        double root = line.g() * line.g() * down * down - line.gg() * (line.n() * down * down - room);
        if (root >= 0) {
            add(0, line.rise() + (-line.g() * down + Math.sqrt(root)) / line.gg(), line.rate());
            add(0, line.rise() + (-line.g() * down - Math.sqrt(root)) / line.gg(), line.rate());
        }
    }

    private void add(double base, double rise, double rate) {
        if (base >= 0 && rise > 0) {
            curves.add(new DipCurve(base, rise, rate));
        }
    }

    @Override
    public Interval range(ToDoubleFunction<DipCurve> figure) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (DipCurve curve : curves) {
            double value = figure.applyAsDouble(curve);
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        return new Interval(low, high);
    }

    @Override
    public boolean endless() {
        return endless;
    }
}
