package tenterbook.recipe.dip;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;
import org.jspecify.annotations.Nullable;

/**
 * Least squares by Levenberg and Marquardt on √c, ln A and ln b, which keeps c ≥ 0 and A, b > 0 without bounds; unlike {@link
 * Profile} it can pull the parameters towards a prior mean.
 */
final class CurveSearch {
    private static final int ROUNDS = 400;
    /** ln A and ln b are held within e^±30, far outside any cloth, so that no step overflows. */
    private static final double FURTHEST = 30;

    private CurveSearch() {}

    /**
     * A prior: each parameter adds ((parameter − middle) / spread)².
     *
     * @param middle √c, ln A, ln b
     * @param spread of each, in units in which one point's scatter is 1
     */
    record Pull(double[] middle, double[] spread) {}

    static Optimum search(Sample sample, DipCurve start, @Nullable Pull pull) {
        int points = sample.size();
        int rows = points + (pull == null ? 0 : 3);
        double[] aim = new double[rows];
        for (int i = 0; i < points; i++) {
            aim[i] = Math.sqrt(sample.weights[i]) * sample.ks(i);
        }
        for (int k = 0; pull != null && k < 3; k++) {
            aim[points + k] = pull.middle[k] / pull.spread[k];
        }
        MultivariateJacobianFunction model = p -> model(sample, p, pull, rows);
        return new LevenbergMarquardtOptimizer()
                .optimize(new LeastSquaresBuilder()
                        .start(parameters(start))
                        .target(aim)
                        .model(model)
                        .parameterValidator(CurveSearch::within)
                        // Ends at steps too small to matter, or after the last round with the best point seen.
                        .checker((round, before, now) -> round >= ROUNDS - 1
                                || Math.abs(before.getCost() - now.getCost()) <= 1e-13 * now.getCost()
                                        && before.getPoint().getDistance(now.getPoint()) < 1e-8)
                        .maxEvaluations(100 * ROUNDS)
                        .maxIterations(ROUNDS)
                        .build());
    }

    static double[] parameters(DipCurve curve) {
        // √c is lifted off 0, where its slope is 0 and the search would not move.
        return new double[] {Math.max(Math.sqrt(curve.base()), 0.03), Math.log(curve.rise()), Math.log(curve.rate())};
    }

    static DipCurve curve(RealVector p) {
        return new DipCurve(p.getEntry(0) * p.getEntry(0), Math.exp(p.getEntry(1)), Math.exp(p.getEntry(2)));
    }

    private static RealVector within(RealVector p) {
        RealVector held = p.copy();
        for (int k = 1; k < 3; k++) {
            held.setEntry(k, Math.max(-FURTHEST, Math.min(FURTHEST, p.getEntry(k))));
        }
        return held;
    }

    private static Pair<RealVector, RealMatrix> model(Sample sample, RealVector p, @Nullable Pull pull, int rows) {
        double[] value = new double[rows];
        double[][] slope = new double[rows][];
        DipCurve curve = curve(p);
        for (int i = 0; i < sample.size(); i++) {
            double w = Math.sqrt(sample.weights[i]);
            value[i] = w * curve.mean(sample.dips(i));
            slope[i] = slopes(curve, p.getEntry(0), sample.dips(i));
            for (int k = 0; k < 3; k++) {
                slope[i][k] *= w;
            }
        }
        for (int k = 0; pull != null && k < 3; k++) {
            value[sample.size() + k] = p.getEntry(k) / pull.spread[k];
            slope[sample.size() + k] = new double[3];
            slope[sample.size() + k][k] = 1 / pull.spread[k];
        }
        return new Pair<>(new ArrayRealVector(value, false), new Array2DRowRealMatrix(slope, false));
    }

    /** Derivatives by √c, ln A and ln b, each the mean over the range of dips. */
    private static double[] slopes(DipCurve curve, double rootOfBase, DipCount dips) {
        double left = 0;
        double bend = 0;
        for (int n = dips.low(); n <= dips.high(); n++) {
            double e = Math.exp(-curve.rate() * n);
            left += e;
            bend += n * e;
        }
        left /= dips.choices();
        bend /= dips.choices();
        return new double[] {2 * rootOfBase, curve.rise() * (1 - left), curve.rise() * curve.rate() * bend};
    }
}
