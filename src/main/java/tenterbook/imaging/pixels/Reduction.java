package tenterbook.imaging.pixels;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Makes a picture smaller by averaging areas, in linear light, so that fine light and dark weave keeps its mean colour
 * and makes no moiré. See-through pixels count by their opacity.
 */
final class Reduction {
    private static final float[] LINEAR = LinearLight.OF_LEVEL;

    private final int width;
    private final int height;
    /** Of the output row being filled: red, green, blue weighted by opacity, then opacity. */
    private final float[] sums;

    private final int[] firstColumn;
    private final float[] leftPart;

    private Reduction(int sourceWidth, int width, int height) {
        this.width = width;
        this.height = height;
        sums = new float[4 * width];
        firstColumn = new int[sourceWidth];
        leftPart = new float[sourceWidth];
        double scale = (double) width / sourceWidth;
        for (int x = 0; x < sourceWidth; x++) {
            int column = (int) Math.min(width - 1, Math.floor(x * scale));
            double inside = Math.min(column + 1, (x + 1) * scale) - x * scale;
            firstColumn[x] = column;
            leftPart[x] = (float) (column == width - 1 ? scale : Math.min(scale, inside));
        }
    }

    /** The reduced picture; empty if the source is no larger than asked. */
    static Optional<RgbPicture> within(PixelRows source, int longEdge) {
        PixelSize from = new PixelSize(source.width(), source.height());
        PixelSize to = from.within(longEdge);
        if (to.equals(from)) {
            return Optional.empty();
        }
        return Optional.of(
                source.opaque()
                        ? opaque(source, to)
                        : new Reduction(source.width(), to.width(), to.height()).of(source));
    }

    private static RgbPicture opaque(PixelRows source, PixelSize to) {
        OpaqueReduction reduction = OpaqueReduction.of(source.width(), source.height(), List.of(to), 1);
        int[] row = new int[source.width()];
        float[] light = new float[3 * row.length];
        for (int y = 0; y < source.height(); y++) {
            source.row(y, row);
            for (int x = 0, at = 0; x < row.length; x++, at += 3) {
                int pixel = row[x];
                light[at] = LinearLight.OF_LEVEL[pixel >> 16 & 0xff];
                light[at + 1] = LinearLight.OF_LEVEL[pixel >> 8 & 0xff];
                light[at + 2] = LinearLight.OF_LEVEL[pixel & 0xff];
            }
            reduction.add(light);
        }
        return reduction.pictures().get(0);
    }

    private RgbPicture of(PixelRows source) {
        int[] out = new int[width * height];
        int[] row = new int[source.width()];
        double scale = (double) height / source.height();
        int y = 0;
        for (int from = 0; from < source.height(); from++) {
            source.row(from, row);
            double end = from == source.height() - 1 ? height : (from + 1) * scale;
            double start = from * scale;
            // A source row lies within one output row, or across the border of two.
            add(row, (float) (Math.min(end, y + 1) - start));
            if (end >= y + 1) {
                finish(out, y++);
                if (y < height && end > y) {
                    add(row, (float) (end - y));
                }
            }
        }
        return new RgbPicture(out, width, height);
    }

    private void add(int[] row, float part) {
        for (int x = 0; x < row.length; x++) {
            int pixel = row[x];
            float opacity = (pixel >>> 24) * (part / 255);
            float red = LINEAR[pixel >> 16 & 0xff] * opacity;
            float green = LINEAR[pixel >> 8 & 0xff] * opacity;
            float blue = LINEAR[pixel & 0xff] * opacity;
            float left = leftPart[x];
            int at = 4 * firstColumn[x];
            sums[at] += left * red;
            sums[at + 1] += left * green;
            sums[at + 2] += left * blue;
            sums[at + 3] += left * opacity;
            float right = leftPart[leftPart.length - 1] - left;
            if (right > 1e-6f && at + 7 < sums.length) {
                sums[at + 4] += right * red;
                sums[at + 5] += right * green;
                sums[at + 6] += right * blue;
                sums[at + 7] += right * opacity;
            }
        }
    }

    private void finish(int[] out, int y) {
        for (int x = 0, at = 0; x < width; x++, at += 4) {
            float opacity = sums[at + 3];
            int alpha = Math.min(255, Math.round(255 * opacity));
            out[y * width + x] = opacity <= 0
                    ? 0
                    : alpha << 24
                            | LinearLight.level(sums[at] / opacity) << 16
                            | LinearLight.level(sums[at + 1] / opacity) << 8
                            | LinearLight.level(sums[at + 2] / opacity);
        }
        Arrays.fill(sums, 0);
    }
}
