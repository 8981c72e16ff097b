package tenterbook.search.recognition;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The projection that carries places of one picture to places of another with the least squared error. */
final class LeastSquares {
    private LeastSquares() {}

    /**
     * @param perspective false for a parallel projection, with six unknowns; true for a perspective one, with eight
     * @return null where the places do not determine one
     */
    static @Nullable Homography fit(
            int count, double[] x, double[] y, double[] toX, double[] toY, boolean perspective) {
        int unknowns = perspective ? 8 : 6;
        double[][] normal = new double[unknowns][unknowns + 1];
        double[] row = new double[unknowns];
        for (int i = 0; i < count; i++) {
            for (int side = 0; side < 2; side++) {
                double target = side == 0 ? toX[i] : toY[i];
                Arrays.fill(row, 0);
                row[3 * side] = x[i];
                row[3 * side + 1] = y[i];
                row[3 * side + 2] = 1;
                if (perspective) {
                    row[6] = -x[i] * target;
                    row[7] = -y[i] * target;
                }
                for (int r = 0; r < unknowns; r++) {
                    for (int c = 0; c < unknowns; c++) {
                        normal[r][c] += row[r] * row[c];
                    }
                    normal[r][unknowns] += row[r] * target;
                }
            }
        }
        return solved(normal) ? made(normal) : null;
    }

    private static Homography made(double[][] solved) {
        double[] h = {0, 0, 0, 0, 0, 0, 0, 0, 1};
        for (int i = 0; i < solved.length; i++) {
            h[i] = solved[i][solved.length];
        }
        return new Homography(h);
    }

    /** Gauss and Jordan's elimination with row exchange; the last column becomes the answer. */
    private static boolean solved(double[][] a) {
        int n = a.length;
        for (int at = 0; at < n; at++) {
            int largest = at;
            for (int r = at + 1; r < n; r++) {
                largest = Math.abs(a[r][at]) > Math.abs(a[largest][at]) ? r : largest;
            }
            double[] pivot = a[largest];
            a[largest] = a[at];
            a[at] = pivot;
            if (Math.abs(pivot[at]) < 1e-12) {
                return false;
            }
            for (int r = 0; r < n; r++) {
                double factor = r == at ? 0 : a[r][at] / pivot[at];
                for (int c = at; c <= n && factor != 0; c++) {
                    a[r][c] -= factor * pivot[c];
                }
            }
        }
        for (int at = 0; at < n; at++) {
            a[at][n] /= a[at][at];
        }
        return true;
    }
}
