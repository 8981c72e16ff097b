package tenterbook.sample;

import java.util.Arrays;

/** A raster of real numbers with the few operations that the pictures need. Coordinates outside are clamped. */
final class Field {
    private static final float FAR = 1e12f;

    final int width;
    final int height;
    final float[] values;

    Field(int width, int height) {
        this.width = width;
        this.height = height;
        this.values = new float[width * height];
    }

    float at(int x, int y) {
        int cx = Math.max(0, Math.min(width - 1, x));
        int cy = Math.max(0, Math.min(height - 1, y));
        return values[cy * width + cx];
    }

    /** Bilinear value; pixel centres lie at half-integers. */
    float sample(double x, double y) {
        double fx = x - 0.5;
        double fy = y - 0.5;
        int x0 = (int) Math.floor(fx);
        int y0 = (int) Math.floor(fy);
        float tx = (float) (fx - x0);
        float ty = (float) (fy - y0);
        float top = at(x0, y0) * (1 - tx) + at(x0 + 1, y0) * tx;
        float low = at(x0, y0 + 1) * (1 - tx) + at(x0 + 1, y0 + 1) * tx;
        return top * (1 - ty) + low * ty;
    }

    double mean() {
        double sum = 0;
        for (float v : values) {
            sum += v;
        }
        return sum / values.length;
    }

    /** Three box passes, close to a Gaussian of that radius; a new field. */
    Field blurred(double radius) {
        Field out = new Field(width, height);
        System.arraycopy(values, 0, out.values, 0, values.length);
        int r = (int) Math.max(1, Math.round(radius * 0.6));
        float[] line = new float[Math.max(width, height)];
        for (int pass = 0; pass < 3; pass++) {
            for (int y = 0; y < height; y++) {
                boxLine(out.values, y * width, 1, width, r, line);
            }
            for (int x = 0; x < width; x++) {
                boxLine(out.values, x, width, height, r, line);
            }
        }
        return out;
    }

    private static void boxLine(float[] data, int start, int step, int n, int r, float[] line) {
        for (int i = 0; i < n; i++) {
            line[i] = data[start + i * step];
        }
        double sum = 0;
        for (int i = -r; i <= r; i++) {
            sum += line[Math.max(0, Math.min(n - 1, i))];
        }
        for (int i = 0; i < n; i++) {
            data[start + i * step] = (float) (sum / (2 * r + 1));
            sum += line[Math.min(n - 1, i + r + 1)] - line[Math.max(0, i - r)];
        }
    }

    /**
     * Distance in pixels to the 0.5 contour: positive where the value is below 0.5, negative above.
     *
     * @see "Felzenszwalb and Huttenlocher 2012, Distance transforms of sampled functions, section 2"
     */
    Field signedDistance() {
        Field out = new Field(width, height);
        float[] outside = squaredDistance(true);
        float[] inside = squaredDistance(false);
        for (int i = 0; i < values.length; i++) {
            out.values[i] = (float) (Math.sqrt(outside[i]) - Math.sqrt(inside[i]));
        }
        return out;
    }

    private float[] squaredDistance(boolean toHigh) {
        float[] f = new float[values.length];
        for (int i = 0; i < f.length; i++) {
            f[i] = (values[i] >= 0.5f) == toHigh ? 0 : FAR;
        }
        int n = Math.max(width, height);
        double[] line = new double[n];
        int[] parabola = new int[n];
        double[] border = new double[n + 1];
        for (int x = 0; x < width; x++) {
            envelope(f, x, width, height, line, parabola, border);
        }
        for (int y = 0; y < height; y++) {
            envelope(f, y * width, 1, width, line, parabola, border);
        }
        return f;
    }

    private static void envelope(float[] data, int start, int step, int n, double[] f, int[] v, double[] z) {
        for (int i = 0; i < n; i++) {
            f[i] = data[start + i * step];
        }
        Arrays.fill(z, 0);
        int k = 0;
        v[0] = 0;
        z[0] = Double.NEGATIVE_INFINITY;
        z[1] = Double.POSITIVE_INFINITY;
        for (int q = 1; q < n; q++) {
            double s = meeting(f, q, v[k]);
            while (s <= z[k]) {
                k--;
                s = meeting(f, q, v[k]);
            }
            k++;
            v[k] = q;
            z[k] = s;
            z[k + 1] = Double.POSITIVE_INFINITY;
        }
        k = 0;
        for (int q = 0; q < n; q++) {
            while (z[k + 1] < q) {
                k++;
            }
            double d = q - v[k];
            data[start + q * step] = (float) (d * d + f[v[k]]);
        }
    }

    private static double meeting(double[] f, int q, int p) {
        return ((f[q] + (double) q * q) - (f[p] + (double) p * p)) / (2.0 * (q - p));
    }
}
