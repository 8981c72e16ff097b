package tenterbook.imaging.pixels;

import java.util.Arrays;
import java.util.Optional;

/**
 * Makes a picture smaller by averaging areas, in linear light, so that fine light and dark weave keeps its mean colour
 * and makes no moiré. See-through pixels count by their opacity. It takes row by row as the rows come: of the large picture
 * no more than a row need be held.
 *
 * <p>Each row is first averaged across, where a narrow row comes of a wide one, and only that is summed downwards.
 */
final class Reduction {
    private static final float[] OPACITY = new float[256];

    static {
        for (int i = 0; i < OPACITY.length; i++) {
            OPACITY[i] = i / 255f;
        }
    }

    private final PixelSize from;
    private final PixelSize to;
    private final int bands;
    /** For each output column, the source column that its right border lies in, and how much of that is still its own. */
    private final int[] border;

    private final float[] share;
    /** A source row averaged across: red, green, blue weighted by opacity, then opacity. */
    private final float[] across;
    /** The same summed downwards, for the output row being filled. */
    private final float[] sums;

    private final int[] out;
    private int taken;
    private int filled;

    /**
     * @param to no larger than {@code from}
     * @param bands as in {@link PixelRows#bands}
     */
    Reduction(PixelSize from, PixelSize to, int bands) {
        this.from = from;
        this.to = to;
        this.bands = bands;
        border = new int[to.width()];
        share = new float[to.width()];
        for (int x = 0; x < border.length; x++) {
            double end = (double) (x + 1) * from.width() / to.width();
            border[x] = Math.min(from.width(), (int) Math.ceil(end - 1e-9)) - 1;
            share[x] = (float) Math.min(1, end - border[x]);
        }
        across = new float[4 * to.width()];
        sums = new float[4 * to.width()];
        out = new int[to.width() * to.height()];
    }

    /** The reduced picture; empty if the source is no larger than asked. */
    static Optional<RgbPicture> within(PixelRows source, int longEdge) {
        PixelSize from = new PixelSize(source.width(), source.height());
        PixelSize to = from.within(longEdge);
        if (to.equals(from)) {
            return Optional.empty();
        }
        Reduction reduction = new Reduction(from, to, source.bands());
        byte[] row = new byte[reduction.bands * from.width()];
        for (int y = 0; y < from.height(); y++) {
            source.row(y, row);
            reduction.add(row);
        }
        return Optional.of(reduction.picture());
    }

    /** Takes the next row. No side is enlarged, so it lies within one output row, or across the border of two. */
    void add(byte[] row) {
        averageAcross(row);
        double scale = (double) to.height() / from.height();
        double whole = (double) to.width() / from.width();
        double start = taken * scale;
        double end = ++taken == from.height() ? to.height() : taken * scale;
        boolean completes = end >= filled + 1 - 1e-9;
        sum((float) (whole * ((completes ? filled + 1 : end) - start)));
        if (completes) {
            finish();
            sum((float) (whole * Math.max(0, end - filled)));
        }
    }

    /** After the last row. */
    RgbPicture picture() {
        return new RgbPicture(out, to.width(), to.height());
    }

    private void averageAcross(byte[] row) {
        float[] light = LinearLight.OF_LEVEL;
        int[] borders = border;
        float[] into = across;
        int step = bands;
        boolean opaque = step == 3;
        float red = 0;
        float green = 0;
        float blue = 0;
        float opacity = 0;
        int at = 0;
        for (int x = 0, put = 0; x < borders.length; x++, put += 4) {
            int end = step * borders[x];
            for (; at < end; at += step) {
                float alpha = opaque ? 1 : OPACITY[row[at + 3] & 0xff];
                red += alpha * light[row[at] & 0xff];
                green += alpha * light[row[at + 1] & 0xff];
                blue += alpha * light[row[at + 2] & 0xff];
                opacity += alpha;
            }
            float alpha = opaque ? 1 : OPACITY[row[at + 3] & 0xff];
            float r = alpha * light[row[at] & 0xff];
            float g = alpha * light[row[at + 1] & 0xff];
            float b = alpha * light[row[at + 2] & 0xff];
            at += step;
            float own = share[x];
            into[put] = red + own * r;
            into[put + 1] = green + own * g;
            into[put + 2] = blue + own * b;
            into[put + 3] = opacity + own * alpha;
            red = (1 - own) * r;
            green = (1 - own) * g;
            blue = (1 - own) * b;
            opacity = (1 - own) * alpha;
        }
    }

    private void sum(float weight) {
        float[] row = across;
        float[] into = sums;
        for (int i = 0; i < into.length; i++) {
            into[i] += weight * row[i];
        }
    }

    private void finish() {
        for (int x = 0, at = 0, put = filled++ * to.width(); x < to.width(); x++, at += 4, put++) {
            float opacity = sums[at + 3];
            out[put] = opacity <= 0
                    ? 0
                    : Math.min(255, Math.round(255 * opacity)) << 24
                            | LinearLight.level(sums[at] / opacity) << 16
                            | LinearLight.level(sums[at + 1] / opacity) << 8
                            | LinearLight.level(sums[at + 2] / opacity);
        }
        Arrays.fill(sums, 0);
    }
}
