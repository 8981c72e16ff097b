package tenterbook.imaging.pixels;

import java.util.ArrayList;
import java.util.List;

/**
 * Makes an opaque picture smaller by averaging areas, in linear light, row by row as the rows come: of the large picture no
 * more than a row need be held. Fine light and dark weave keeps its mean colour and makes no moiré.
 *
 * <p>Each row is first averaged across, where a narrow row comes of a wide one, and only that is summed downwards. A further
 * reduction, if there is one, is fed with an output row's light before it is rounded to levels.
 */
final class OpaqueReduction {
    private final int sourceHeight;
    private final int width;
    private final int height;
    private final OpaqueReduction further;
    /** For each output column, the source column that its right border lies in, and how much of that is still its own. */
    private final int[] border;

    private final float[] share;
    /** Of an output column, what one whole source column makes. */
    private final double whole;
    /** A source row averaged across, its borders shared out: red, green, blue, red, ... */
    private final float[] across;
    /** The same summed downwards, for the output row being filled and the one after. */
    private float[] sums;

    private float[] sumsAfter;
    private final int[] line;
    private final TurnedPixels out;
    private int taken;
    private int filled;

    /** Of the row to come: how much of a column's light belongs to the output row being filled, and to the one after. */
    private float part;

    private float partAfter;
    private boolean completes;

    private OpaqueReduction(int sourceWidth, int sourceHeight, PixelSize to, int orientation, OpaqueReduction further) {
        this.sourceHeight = sourceHeight;
        this.width = to.width();
        this.height = to.height();
        this.further = further;
        border = new int[width];
        share = new float[width];
        for (int x = 0; x < width; x++) {
            double end = (double) (x + 1) * sourceWidth / width;
            border[x] = x == width - 1 ? sourceWidth - 1 : (int) Math.ceil(end - 1e-9) - 1;
            share[x] = x == width - 1 ? 1 : (float) (end - border[x]);
        }
        whole = (double) width / sourceWidth;
        across = new float[3 * width];
        sums = new float[3 * width];
        sumsAfter = new float[3 * width];
        line = new int[width];
        out = new TurnedPixels(width, height, orientation);
    }

    /**
     * One reduction after the other, the largest first.
     *
     * @param sizes as stored, each no larger than the one before
     * @param orientation as in {@link ExifOrientation}; the pictures come out upright
     */
    static OpaqueReduction of(int sourceWidth, int sourceHeight, List<PixelSize> sizes, int orientation) {
        PixelSize first = sizes.get(0);
        List<PixelSize> rest = sizes.subList(1, sizes.size());
        return new OpaqueReduction(
                sourceWidth,
                sourceHeight,
                first,
                orientation,
                rest.isEmpty() ? null : of(first.width(), first.height(), rest, orientation));
    }

    /** The next row, as red, green, blue, red, ... */
    void add(byte[] rgb) {
        float[] light = LinearLight.OF_LEVEL;
        int[] borders = border;
        float[] shares = share;
        float[] to = across;
        float red = 0;
        float green = 0;
        float blue = 0;
        int at = 0;
        for (int x = 0, put = 0; x < borders.length; x++, put += 3) {
            int end = 3 * borders[x];
            while (at != end) {
                red += light[rgb[at] & 0xff];
                green += light[rgb[at + 1] & 0xff];
                blue += light[rgb[at + 2] & 0xff];
                at += 3;
            }
            float own = shares[x];
            float other = 1 - own;
            float r = light[rgb[at] & 0xff];
            float g = light[rgb[at + 1] & 0xff];
            float b = light[rgb[at + 2] & 0xff];
            at += 3;
            to[put] = red + own * r;
            to[put + 1] = green + own * g;
            to[put + 2] = blue + own * b;
            red = other * r;
            green = other * g;
            blue = other * b;
        }
        down();
    }

    /** The next row as light from 0 to 1. */
    void add(float[] from) {
        int[] borders = border;
        float[] shares = share;
        float[] to = across;
        float red = 0;
        float green = 0;
        float blue = 0;
        int at = 0;
        for (int x = 0, put = 0; x < borders.length; x++, put += 3) {
            int end = 3 * borders[x];
            while (at != end) {
                red += from[at];
                green += from[at + 1];
                blue += from[at + 2];
                at += 3;
            }
            float own = shares[x];
            float other = 1 - own;
            float r = from[at];
            float g = from[at + 1];
            float b = from[at + 2];
            at += 3;
            to[put] = red + own * r;
            to[put + 1] = green + own * g;
            to[put + 2] = blue + own * b;
            red = other * r;
            green = other * g;
            blue = other * b;
        }
        down();
    }

    /** Sums the row that stands in {@link #across}, and puts an output row out when its last share has come. */
    private void down() {
        share();
        float[] row = across;
        float[] into = sums;
        float weight = part;
        for (int i = 0; i < into.length; i++) {
            into[i] += weight * row[i];
        }
        if (completes) {
            float[] after = sumsAfter;
            float weightAfter = partAfter;
            for (int i = 0; i < after.length; i++) {
                after[i] = weightAfter * row[i];
            }
            finish();
        }
    }

    /** A source row lies within one output row, or across the border of two, since no side is enlarged. */
    private void share() {
        double scale = (double) height / sourceHeight;
        double start = taken * scale;
        double end = ++taken == sourceHeight ? height : taken * scale;
        completes = end >= filled + 1 - 1e-9;
        part = (float) (whole * ((completes ? filled + 1 : end) - start));
        partAfter = completes ? (float) (whole * Math.max(0, end - filled - 1)) : 0;
    }

    private void finish() {
        float[] row = sums;
        for (int x = 0, at = 0; x < line.length; x++, at += 3) {
            line[x] = 0xff000000
                    | LinearLight.level(row[at]) << 16
                    | LinearLight.level(row[at + 1]) << 8
                    | LinearLight.level(row[at + 2]);
        }
        out.row(line, 0);
        if (further != null) {
            further.add(row);
        }
        sums = sumsAfter;
        sumsAfter = row;
        filled++;
    }

    /** After the last row: one upright picture for each size, in their order. */
    List<RgbPicture> pictures() {
        List<RgbPicture> pictures = new ArrayList<>();
        for (OpaqueReduction one = this; one != null; one = one.further) {
            pictures.add(one.out.picture());
        }
        return pictures;
    }
}
