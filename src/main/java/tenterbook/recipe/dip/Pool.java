package tenterbook.recipe.dip;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.jspecify.annotations.Nullable;

/** The estimation behind {@link PooledCurves}: groups' parameters, their middle and spread, and the scatter of pieces. */
final class Pool {
    private static final int ROUNDS = 40;
    /** Weight of the usual spread, in groups. */
    private static final double USUAL_WEIGHT = 2;

    private final List<Sample> samples = new ArrayList<>();
    private final List<double[]> parameters = new ArrayList<>();
    private final List<@Nullable RealMatrix> covariances = new ArrayList<>();
    private final double[] spread = usualSpread();
    private double[] middle;
    private final double leastScatter;
    private double scatter;

    Pool(DipCurve studio, double scatter) {
        this.middle = CurveSearch.parameters(studio);
        this.leastScatter = 1e-4 * studio.limit();
        this.scatter = Math.max(scatter, leastScatter);
    }

    /**
     * Usual variation of √c, ln A and ln b between cloths and vats of one studio: 0.1, and about 30 % in A and b. Our own
     * estimate; it matters only where there are few groups.
     */
    static double[] usualSpread() {
        return new double[] {0.1, 0.3, 0.3};
    }

    /**
     * A group's curve in √c, ln A and ln b.
     *
     * @param borrowed share of the rate that comes from the middle, 0 to 1
     */
    record Member(double[] middle, RealMatrix covariance, double borrowed) {}

    int add(List<DipPoint> points) {
        samples.add(Sample.of(points));
        parameters.add(middle);
        covariances.add(null);
        return samples.size() - 1;
    }

    double scatter() {
        return scatter;
    }

    /** Alternates between the groups' curves and what they share, for a fixed number of rounds. */
    void settle() {
        for (int round = 0; round < ROUNDS; round++) {
            double squares = 0;
            int points = 0;
            for (int g = 0; g < samples.size(); g++) {
                squares += curve(g);
                points += samples.get(g).size();
            }
            scatter = Math.max(Math.sqrt(squares / points), leastScatter);
            share();
        }
        for (int g = 0; g < samples.size(); g++) {
            curve(g);
        }
    }

    /** Fits one group; returns its expected squares about the true curve, which exceed those about the fitted one. */
    private double curve(int g) {
        DipCurve start = CurveSearch.curve(MatrixUtils.createRealVector(parameters.get(g)));
        Sample sample = samples.get(g).weighed(start, scatter * scatter);
        samples.set(g, sample);
        double[] pull = new double[3];
        for (int k = 0; k < 3; k++) {
            pull[k] = spread[k] / scatter;
        }
        Optimum best = CurveSearch.search(sample, start, new CurveSearch.Pull(middle, pull));
        RealMatrix slopes = best.getJacobian();
        RealMatrix covariance = DrawnCurves.symmetric(
                MatrixUtils.inverse(slopes.transposeMultiply(slopes)).scalarMultiply(scatter * scatter));
        parameters.set(g, best.getPoint().toArray());
        covariances.set(g, covariance);
        RealMatrix own = slopes.getSubMatrix(0, sample.size() - 1, 0, 2);
        double doubt = own.multiply(covariance).multiplyTransposed(own).getTrace();
        return sample.squares(CurveSearch.curve(best.getPoint())) + doubt;
    }

    private void share() {
        double[] usual = usualSpread();
        double[] centre = new double[3];
        for (int k = 0; k < 3; k++) {
            for (double[] p : parameters) {
                centre[k] += p[k] / parameters.size();
            }
            double sum = USUAL_WEIGHT * usual[k] * usual[k];
            for (int g = 0; g < parameters.size(); g++) {
                double away = parameters.get(g)[k] - centre[k];
                sum += away * away + covariances.get(g).getEntry(k, k);
            }
            spread[k] = Math.sqrt(sum / (parameters.size() + USUAL_WEIGHT));
        }
        middle = centre;
    }

    Member member(int g) {
        RealMatrix own = covariances.get(g);
        // Moving the middle moves the group by own × spread⁻².
        RealMatrix lean = own.multiply(inverseSpread());
        RealMatrix shared = lean.multiply(doubtOfMiddle()).multiplyTransposed(lean);
        double borrowed = Math.max(0, Math.min(1, own.getEntry(2, 2) / (spread[2] * spread[2])));
        return new Member(parameters.get(g), DrawnCurves.symmetric(own.add(shared)), borrowed);
    }

    /** A group without points: the distribution of all groups. */
    Member stranger() {
        RealMatrix covariance = MatrixUtils.inverse(inverseSpread()).add(doubtOfMiddle());
        return new Member(middle, DrawnCurves.symmetric(covariance), 1);
    }

    private RealMatrix inverseSpread() {
        return MatrixUtils.createRealDiagonalMatrix(
                new double[] {1 / (spread[0] * spread[0]), 1 / (spread[1] * spread[1]), 1 / (spread[2] * spread[2])});
    }

    /** Covariance of the middle, from the spread of the groups and the uncertainty of each. */
    private RealMatrix doubtOfMiddle() {
        RealMatrix known = null;
        for (RealMatrix own : covariances) {
            // Information about the middle: T⁻¹ − T⁻¹ V T⁻¹, with T the spread and V the group's own covariance.
            RealMatrix information =
                    inverseSpread().subtract(inverseSpread().multiply(own).multiply(inverseSpread()));
            known = known == null ? information : known.add(information);
        }
        double[][] held = DrawnCurves.symmetric(known).getData();
        for (int k = 0; k < 3; k++) {
            // Where no group informs a parameter, the usual spread still bounds it.
            held[k][k] += 1e-3 / (spread[k] * spread[k]);
        }
        return MatrixUtils.inverse(MatrixUtils.createRealMatrix(held));
    }
}
