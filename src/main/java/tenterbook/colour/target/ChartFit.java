package tenterbook.colour.target;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;

/**
 * The 3 × 3 matrix from seen to known light by least squares, each patch weighted by Y to the minus two thirds, the slope of
 * L*, so that dark patches count as for the eye. A gain for each channel applied first would change nothing: the matrix
 * includes it.
 *
 * @param holdOut ΔE00 of each patch under the matrix fitted to all the others
 */
record ChartFit(Matrix3 matrix, List<Double> holdOut) {
    /** Keeps black's weight finite. */
    private static final double LEAST_Y = 0.02;

    static ChartFit of(List<LinearRgb> seen, List<Lab> known) {
        List<LinearRgb> lights = known.stream().map(LinearRgb::of).toList();
        List<Double> errors = new ArrayList<>();
        for (int i = 0; i < seen.size(); i++) {
            double[] out = solve(seen, lights, i).times(parts(seen.get(i)));
            errors.add(Ciede2000.difference(new LinearRgb(out[0], out[1], out[2]).lab(), known.get(i)));
        }
        return new ChartFit(solve(seen, lights, -1), errors);
    }

    double meanHoldOut() {
        return holdOut.stream().mapToDouble(e -> e).average().orElseThrow();
    }

    double worstHoldOut() {
        return holdOut.stream().mapToDouble(e -> e).max().orElseThrow();
    }

    /** M = (Σ w known seenᵀ) (Σ w seen seenᵀ)⁻¹. */
    private static Matrix3 solve(List<LinearRgb> seen, List<LinearRgb> known, int leftOut) {
        double[] cross = new double[9];
        double[] square = new double[9];
        IntStream.range(0, seen.size()).filter(i -> i != leftOut).forEach(i -> {
            double[] s = parts(seen.get(i));
            double[] k = parts(known.get(i));
            double slope = Math.pow(Math.max(LEAST_Y, known.get(i).luminance()), -2.0 / 3);
            for (int row = 0; row < 3; row++) {
                for (int column = 0; column < 3; column++) {
                    cross[3 * row + column] += slope * slope * k[row] * s[column];
                    square[3 * row + column] += slope * slope * s[row] * s[column];
                }
            }
        });
        Matrix3 inverse = Matrix3.of(square).inverse();
        double[] matrix = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                double[] in = inverse.rows().stream().mapToDouble(d -> d).toArray();
                for (int k = 0; k < 3; k++) {
                    matrix[3 * row + column] += cross[3 * row + k] * in[3 * k + column];
                }
            }
        }
        return Matrix3.of(matrix);
    }

    private static double[] parts(LinearRgb light) {
        return new double[] {light.red(), light.green(), light.blue()};
    }
}
