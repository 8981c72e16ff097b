package tenterbook.recipe.dip;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import tenterbook.colour.space.Interval;

/** Curves drawn with a fixed seed from a normal distribution of √c, ln A and ln b; intervals are their middle 95 %. */
final class DrawnCurves implements Plausible {
    private static final long SEED = 20240229L;
    private static final int DRAWS = 2000;

    private final DipCurve[] curves = new DipCurve[DRAWS];

    DrawnCurves(double[] middle, RealMatrix covariance) {
        SplittableRandom random = new SplittableRandom(SEED);
        RealMatrix root = new CholeskyDecomposition(covariance, 1e-9, 0).getL();
        for (int i = 0; i < DRAWS; i++) {
            double[] normal = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
            double[] shift = root.operate(normal);
            curves[i] = CurveSearch.curve(new org.hipparchus.linear.ArrayRealVector(
                    new double[] {middle[0] + shift[0], middle[1] + shift[1], middle[2] + shift[2]}));
        }
    }

    /** The symmetric part, with 1e-12 on the diagonal so that rounding leaves it positive definite. */
    static RealMatrix symmetric(RealMatrix matrix) {
        RealMatrix even = matrix.add(matrix.transpose()).scalarMultiply(0.5);
        double[][] data = even.getData();
        for (int k = 0; k < data.length; k++) {
            data[k][k] += 1e-12;
        }
        return new Array2DRowRealMatrix(data, false);
    }

    @Override
    public Interval range(ToDoubleFunction<DipCurve> figure) {
        double[] values = Arrays.stream(curves).mapToDouble(figure).sorted().toArray();
        return new Interval(values[DRAWS / 40 - 1], values[DRAWS - DRAWS / 40]);
    }

    @Override
    public boolean endless() {
        return false;
    }
}
