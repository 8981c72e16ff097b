package tenterbook.photo;

import java.util.ArrayList;
import java.util.List;

/**
 * Makes an opaque picture smaller by averaging areas, in linear light, row by row as the rows come: of the large picture no
 * more than a row need be held. Fine light and dark weave keeps its mean colour and makes no moiré.
 *
 * <p>Rows are first summed downwards, which goes quickly, and averaged across only once for each output row. A further
 * reduction, if there is one, is fed with that row's light before it is rounded to levels.
 */
final class OpaqueReduction {
    private final int sourceHeight;
    private final int width;
    private final int height;
    private final Turn turn;
    private final OpaqueReduction further;
    /** For each output column, the source column that its right border lies in, and how much of that is still its own. */
    private final int[] border;

    private final float[] share;
    private final float whole;
    /** Light summed downwards, for the output row being filled and the one after: red, green, blue, red, ... */
    private float[] sums;

    private float[] sumsAfter;
    private final float[] across;
    private final int[] out;
    private int taken;
    private int filled;

    /** Of the row to come: how much belongs to the output row being filled, and to the one after. */
    private float part;

    private float partAfter;
    private boolean completes;

    private OpaqueReduction(int sourceWidth, int sourceHeight, Size to, int orientation, OpaqueReduction further) {
        this.sourceHeight = sourceHeight;
        this.width = to.width();
        this.height = to.height();
        this.turn = Turn.of(orientation, width, height);
        this.further = further;
        border = new int[width];
        share = new float[width];
        for (int x = 0; x < width; x++) {
            double end = (double) (x + 1) * sourceWidth / width;
            border[x] = x == width - 1 ? sourceWidth - 1 : (int) Math.ceil(end - 1e-9) - 1;
            share[x] = x == width - 1 ? 1 : (float) (end - border[x]);
        }
        whole = (float) ((double) width / sourceWidth);
        sums = new float[3 * sourceWidth];
        sumsAfter = new float[3 * sourceWidth];
        across = new float[3 * width];
        out = new int[width * height];
    }

    /**
     * One reduction after the other, the largest first.
     *
     * @param sizes as stored, each no larger than the one before
     * @param orientation as in {@link Turn}; the pictures come out upright
     */
    static OpaqueReduction of(int sourceWidth, int sourceHeight, List<Size> sizes, int orientation) {
        Size first = sizes.get(0);
        List<Size> rest = sizes.subList(1, sizes.size());
        return new OpaqueReduction(
                sourceWidth,
                sourceHeight,
                first,
                orientation,
                rest.isEmpty() ? null : of(first.width(), first.height(), rest, orientation));
    }

    /** The next row, as red, green, blue, red, ... */
    void add(byte[] rgb) {
        share();
        float[] light = LinearLight.OF_LEVEL;
        float[] into = sums;
        if (!completes) {
            float weight = part;
            for (int i = 0; i < into.length; i++) {
                into[i] += weight * light[rgb[i] & 0xff];
            }
            return;
        }
        float[] after = sumsAfter;
        float weight = part;
        float weightAfter = partAfter;
        for (int i = 0; i < into.length; i++) {
            float value = light[rgb[i] & 0xff];
            into[i] += weight * value;
            after[i] = weightAfter * value;
        }
        finish();
    }

    /** The next row as light from 0 to 1. */
    void add(float[] light) {
        share();
        float[] into = sums;
        float weight = part;
        for (int i = 0; i < into.length; i++) {
            into[i] += weight * light[i];
        }
        if (completes) {
            float[] after = sumsAfter;
            float weightAfter = partAfter;
            for (int i = 0; i < after.length; i++) {
                after[i] = weightAfter * light[i];
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
        part = (float) ((completes ? filled + 1 : end) - start);
        partAfter = completes ? (float) Math.max(0, end - filled - 1) : 0;
    }

    private void finish() {
        average();
        int step = turn.along();
        for (int x = 0, at = 0, to = turn.first() + filled * turn.down(); x < width; x++, at += 3, to += step) {
            out[to] = 0xff000000
                    | LinearLight.level(across[at]) << 16
                    | LinearLight.level(across[at + 1]) << 8
                    | LinearLight.level(across[at + 2]);
        }
        if (further != null) {
            further.add(across);
        }
        float[] next = sumsAfter;
        sumsAfter = sums;
        sums = next;
        filled++;
    }

    private void average() {
        float[] from = sums;
        float red = 0;
        float green = 0;
        float blue = 0;
        int at = 0;
        for (int x = 0, to = 0; x < width; x++, to += 3) {
            for (int end = 3 * border[x]; at < end; at += 3) {
                red += from[at];
                green += from[at + 1];
                blue += from[at + 2];
            }
            float own = share[x];
            float r = from[at];
            float g = from[at + 1];
            float b = from[at + 2];
            at += 3;
            across[to] = whole * (red + own * r);
            across[to + 1] = whole * (green + own * g);
            across[to + 2] = whole * (blue + own * b);
            red = r - own * r;
            green = g - own * g;
            blue = b - own * b;
        }
    }

    /** After the last row: one upright picture for each size, in their order. */
    List<Picture> pictures() {
        List<Picture> pictures = new ArrayList<>();
        for (OpaqueReduction one = this; one != null; one = one.further) {
            if (one.filled != one.height) {
                throw new IllegalStateException("Only " + one.taken + " of " + one.sourceHeight + " rows were given");
            }
            Size upright = one.turn.size();
            pictures.add(new Picture(one.out, upright.width(), upright.height()));
        }
        return pictures;
    }
}
