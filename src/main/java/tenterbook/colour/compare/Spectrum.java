package tenterbook.colour.compare;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/** The two-dimensional Fourier transform of a plane whose sides are powers of two. */
final class Spectrum {
    private final int width;
    private final int height;
    private final double[][] rows;
    private final double[][] imaginary;

    private Spectrum(int width, int height, double[][] rows, double[][] imaginary) {
        this.width = width;
        this.height = height;
        this.rows = rows;
        this.imaginary = imaginary;
    }

    /**
     * The mean is subtracted and NaN replaced by 0; {@code windowed} fades the edges, which would else appear as lines in the
     * spectrum.
     */
    static Spectrum of(Plane plane, boolean windowed) {
        double mean = 0;
        int n = 0;
        for (double v : plane.values()) {
            if (!Double.isNaN(v)) {
                mean += v;
                n++;
            }
        }
        mean /= Math.max(1, n);
        double[][] real = new double[plane.height()][plane.width()];
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                double v = plane.values()[y * plane.width() + x];
                double window = windowed ? hann(x, plane.width()) * hann(y, plane.height()) : 1;
                real[y][x] = Double.isNaN(v) ? 0 : (v - mean) * window;
            }
        }
        Spectrum spectrum =
                new Spectrum(plane.width(), plane.height(), real, new double[plane.height()][plane.width()]);
        spectrum.transform(TransformType.FORWARD);
        return spectrum;
    }

    private static double hann(int i, int n) {
        return 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / n);
    }

    private void transform(TransformType way) {
        for (int y = 0; y < height; y++) {
            FastFourierTransformer.transformInPlace(
                    new double[][] {rows[y], imaginary[y]}, DftNormalization.STANDARD, way);
        }
        double[][] column = new double[2][height];
        for (int x = 0; x < width; x++) {
            for (int y = 0; y < height; y++) {
                column[0][y] = rows[y][x];
                column[1][y] = imaginary[y][x];
            }
            FastFourierTransformer.transformInPlace(column, DftNormalization.STANDARD, way);
            for (int y = 0; y < height; y++) {
                rows[y][x] = column[0][y];
                imaginary[y][x] = column[1][y];
            }
        }
    }

    /** A point at x, y of this plane is at x + dx, y + dy of the other. */
    record Shift(double dx, double dy) {}

    /**
     * The strongest shifts by phase correlation (Kuglin and Hines 1975), strongest first, no two within
     * {@code apart} of each other.
     */
    List<Shift> shifts(Spectrum other, int most, int apart) {
        Spectrum cross = new Spectrum(width, height, new double[height][width], new double[height][width]);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double re = other.rows[y][x] * rows[y][x] + other.imaginary[y][x] * imaginary[y][x];
                double im = other.imaginary[y][x] * rows[y][x] - other.rows[y][x] * imaginary[y][x];
                double size = Math.hypot(re, im);
                // High frequencies are weave and noise, which differ between two photographs.
                double fx = Math.min(x, width - x) / (double) width;
                double fy = Math.min(y, height - y) / (double) height;
                double weight = size < 1e-12 ? 0 : Math.exp(-40 * (fx * fx + fy * fy)) / size;
                cross.rows[y][x] = re * weight;
                cross.imaginary[y][x] = im * weight;
            }
        }
        cross.transform(TransformType.INVERSE);
        List<Shift> found = new ArrayList<>();
        for (int k = 0; k < most; k++) {
            int bestX = 0;
            int bestY = 0;
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    if (cross.rows[y][x] > cross.rows[bestY][bestX]) {
                        bestX = x;
                        bestY = y;
                    }
                }
            }
            found.add(new Shift(
                    bestX <= width / 2 ? bestX : bestX - width, bestY <= height / 2 ? bestY : bestY - height));
            for (int dy = -apart; dy <= apart; dy++) {
                for (int dx = -apart; dx <= apart; dx++) {
                    cross.rows[Math.floorMod(bestY + dy, height)][Math.floorMod(bestX + dx, width)] =
                            Double.NEGATIVE_INFINITY;
                }
            }
        }
        return found;
    }

    /**
     * The magnitude in log-polar coordinates: across, the logarithm of the frequency; down, its angle over half a turn.
     * Rotating or scaling the plane shifts it; shifting the plane leaves it unchanged (Reddy and Chatterji 1996).
     */
    Plane unrolled(int radii, int angles, double least, double most) {
        double[] values = new double[radii * angles];
        for (int t = 0; t < angles; t++) {
            double angle = Math.PI * t / angles;
            for (int r = 0; r < radii; r++) {
                double radius = least * Math.pow(most / least, (double) r / radii);
                values[t * radii + r] = strength(radius * Math.cos(angle), radius * Math.sin(angle)) * radius;
            }
        }
        for (int i = 0; i < values.length; i++) {
            values[i] = Math.log1p(values[i]);
        }
        return new Plane(values, radii, angles);
    }

    private double strength(double fx, double fy) {
        int x0 = (int) Math.floor(fx);
        int y0 = (int) Math.floor(fy);
        double u = fx - x0;
        double v = fy - y0;
        return (size(x0, y0) * (1 - u) + size(x0 + 1, y0) * u) * (1 - v)
                + (size(x0, y0 + 1) * (1 - u) + size(x0 + 1, y0 + 1) * u) * v;
    }

    private double size(int x, int y) {
        int column = Math.floorMod(x, width);
        int row = Math.floorMod(y, height);
        return Math.hypot(rows[row][column], imaginary[row][column]);
    }
}
