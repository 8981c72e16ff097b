package tenterbook.photo;

import java.util.Arrays;

/**
 * Makes an opaque picture smaller by averaging areas, in linear light, row by row as the rows come: no more of the large
 * picture than one row need be held. Fine light and dark weave keeps its mean colour and makes no moiré.
 *
 * <p>Each row is averaged across first, in whole numbers, and the result then added to one or two output rows. A pixel on
 * the border of two output pixels is shared between them in parts of 1/512, and light is counted in 65,535 steps, so a sum
 * fits an {@code int} up to a reduction by 60; JPEG's longest side (65,535) to 2048 is one by 32.
 */
final class OpaqueReduction {
    static final int MOST = 60;

    private static final int PARTS = 512;

    private final int width;
    private final int height;
    private final double scale;
    /** For each output column, the source column that its right border lies in, and how much of that is still its own. */
    private final int[] border;

    private final int[] share;
    /** Red, green and blue of one source row, averaged across; and of the output row being filled. */
    private final float[] across;

    private final float[] sums;
    private final float whole;
    private final int[] out;
    private int taken;
    private int filled;

    /** Neither side may be larger in the result, or more than {@link #MOST} times smaller. */
    OpaqueReduction(int sourceWidth, int sourceHeight, int width, int height) {
        this.width = width;
        this.height = height;
        scale = (double) height / sourceHeight;
        border = new int[width];
        share = new int[width];
        for (int x = 0; x < width; x++) {
            double end = (double) (x + 1) * sourceWidth / width;
            border[x] = x == width - 1 ? sourceWidth - 1 : (int) Math.ceil(end - 1e-9) - 1;
            share[x] = x == width - 1 ? PARTS : (int) Math.round((end - border[x]) * PARTS);
        }
        across = new float[3 * width];
        sums = new float[3 * width];
        whole = (float) ((double) width / sourceWidth / PARTS / LinearLight.FULL);
        out = new int[width * height];
    }

    /** The next row, as red, green, blue, red, ... */
    void add(byte[] rgb) {
        int[] light = LinearLight.OF_LEVEL;
        int red = 0;
        int green = 0;
        int blue = 0;
        int at = 0;
        for (int x = 0; x < width; x++) {
            for (int end = 3 * border[x]; at < end; at += 3) {
                red += light[rgb[at] & 0xff] * PARTS;
                green += light[rgb[at + 1] & 0xff] * PARTS;
                blue += light[rgb[at + 2] & 0xff] * PARTS;
            }
            int own = share[x];
            int left = PARTS - own;
            int r = light[rgb[at] & 0xff];
            int g = light[rgb[at + 1] & 0xff];
            int b = light[rgb[at + 2] & 0xff];
            at += 3;
            across[3 * x] = red + own * r;
            across[3 * x + 1] = green + own * g;
            across[3 * x + 2] = blue + own * b;
            red = left * r;
            green = left * g;
            blue = left * b;
        }
        down();
    }

    /** The next row, as 0xAARRGGBB; opacity is not looked at. */
    void add(int[] argb) {
        int[] light = LinearLight.OF_LEVEL;
        int red = 0;
        int green = 0;
        int blue = 0;
        int at = 0;
        for (int x = 0; x < width; x++) {
            for (int end = border[x]; at < end; at++) {
                int pixel = argb[at];
                red += light[pixel >> 16 & 0xff] * PARTS;
                green += light[pixel >> 8 & 0xff] * PARTS;
                blue += light[pixel & 0xff] * PARTS;
            }
            int own = share[x];
            int left = PARTS - own;
            int pixel = argb[at++];
            int r = light[pixel >> 16 & 0xff];
            int g = light[pixel >> 8 & 0xff];
            int b = light[pixel & 0xff];
            across[3 * x] = red + own * r;
            across[3 * x + 1] = green + own * g;
            across[3 * x + 2] = blue + own * b;
            red = left * r;
            green = left * g;
            blue = left * b;
        }
        down();
    }

    /** A source row lies within one output row, or across the border of two. */
    private void down() {
        double start = taken++ * scale;
        double end = start + scale;
        float part = (float) ((filled == height - 1 ? end : Math.min(end, filled + 1)) - start) * whole;
        for (int i = 0; i < sums.length; i++) {
            sums[i] += part * across[i];
        }
        if (filled < height - 1 && end >= filled + 1 - 1e-9) {
            finish();
            float rest = (float) (end - filled) * whole;
            for (int i = 0; rest > 0 && i < sums.length; i++) {
                sums[i] = rest * across[i];
            }
        }
    }

    private void finish() {
        for (int x = 0, at = 0, to = filled * width; x < width; x++, at += 3) {
            out[to++] = 0xff000000
                    | LinearLight.level(sums[at]) << 16
                    | LinearLight.level(sums[at + 1]) << 8
                    | LinearLight.level(sums[at + 2]);
        }
        Arrays.fill(sums, 0);
        filled++;
    }

    /** After the last row. */
    Picture picture() {
        if (filled < height) {
            finish();
        }
        return new Picture(out, width, height);
    }
}
