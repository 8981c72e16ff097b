package tenterbook.colour.palette;

import java.util.Arrays;

/**
 * The pixels of a region in CIELAB, thinned on a regular grid to at most {@link #MOST}. Pixels less than half opaque
 * are left out: they show nothing of the cloth.
 */
final class LabSample {
    static final int MOST = 40_000;

    /** L, a, b, L, a, b, ... */
    final double[] values;

    final int size;

    private LabSample(double[] values) {
        this.values = values;
        this.size = values.length / 3;
    }

    /** @param values L, a, b, L, a, b, ... at least one colour */
    static LabSample of(double[] values) {
        return new LabSample(values);
    }

    /** Cells of a raster, each so many-th of those that are wanted, so that there are at most {@code most}. */
    static LabSample of(LabRaster raster, boolean[] wanted, int most) {
        int cells = 0;
        for (boolean each : wanted) {
            cells += each ? 1 : 0;
        }
        int step = 1 + (cells - 1) / most;
        double[] values = new double[3 * (cells / step + 1)];
        int filled = 0;
        int passed = 0;
        for (int cell = 0; cell < wanted.length; cell++) {
            if (wanted[cell] && passed++ % step == 0) {
                values[filled++] = raster.lightness(cell);
                values[filled++] = raster.a(cell);
                values[filled++] = raster.b(cell);
            }
        }
        return new LabSample(Arrays.copyOf(values, filled));
    }

    static LabSample of(Pixels picture, Region region, PixelColour colour) {
        int width = picture.width();
        int height = picture.height();
        int x0 = (int) Math.floor(region.left() * width);
        int x1 = (int) Math.ceil(region.right() * width);
        int y0 = (int) Math.floor(region.top() * height);
        int y1 = (int) Math.ceil(region.bottom() * height);
        int step = step(x1 - x0, y1 - y0);
        double[] values = new double[3 * steps(x1 - x0, step) * steps(y1 - y0, step)];
        int filled = 0;
        for (int y = y0 + step / 2; y < y1; y += step) {
            for (int x = x0 + step / 2; x < x1; x += step) {
                if (picture.argb()[y * width + x] >>> 24 >= 128
                        && region.contains((x + 0.5) / width, (y + 0.5) / height)) {
                    colour.write(picture.linear(x, y), values, filled);
                    filled += 3;
                }
            }
        }
        return new LabSample(Arrays.copyOf(values, filled));
    }

    private static int step(int width, int height) {
        int step = 1;
        while ((long) steps(width, step) * steps(height, step) > MOST) {
            step++;
        }
        return step;
    }

    private static int steps(int length, int step) {
        return (length + step - 1) / step;
    }
}
