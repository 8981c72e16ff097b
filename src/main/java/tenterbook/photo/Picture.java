package tenterbook.photo;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;

/**
 * Upright sRGB pixels, 0xAARRGGBB row by row.
 *
 * @param argb width × height values, not to be changed
 */
record Picture(int[] argb, int width, int height) {
    private static final int STRIP = 32;

    /** This picture with its long edge reduced to {@code longEdge} pixels; itself if it is no longer than that. */
    Picture within(int longEdge) {
        return Reduction.within(new ArgbRows(argb, width, height), longEdge).orElse(this);
    }

    /**
     * For encoding: opaque, on white where the original was see-through. The bytes stand as red, green, blue, which the
     * encoder copies row by row; any other order it takes apart pixel by pixel.
     */
    BufferedImage opaque() {
        byte[] rgb = new byte[3 * argb.length];
        for (int i = 0, at = 0; i < argb.length; i++, at += 3) {
            int pixel = argb[i] >>> 24 == 255 ? argb[i] : onWhite(argb[i], argb[i] >>> 24);
            rgb[at] = (byte) (pixel >> 16);
            rgb[at + 1] = (byte) (pixel >> 8);
            rgb[at + 2] = (byte) pixel;
        }
        WritableRaster raster = Raster.createInterleavedRaster(
                new DataBufferByte(rgb, rgb.length), width, height, 3 * width, 3, new int[] {0, 1, 2}, null);
        ColorModel model = new ComponentColorModel(
                ColorSpace.getInstance(ColorSpace.CS_sRGB), false, false, Transparency.OPAQUE, DataBuffer.TYPE_BYTE);
        return new BufferedImage(model, raster, false, null);
    }

    private static int onWhite(int pixel, int alpha) {
        int out = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            out = out << 8 | ((pixel >> shift & 0xff) * alpha + 255 * (255 - alpha) + 127) / 255;
        }
        return out;
    }

    /**
     * Turned and mirrored as an EXIF orientation asks (JEITA CP-3451, tag 274: where row 0 and column 0 of the stored
     * picture belong).
     *
     * @param orientation 1 to 8
     */
    Picture upright(int orientation) {
        if (orientation < 1 || orientation > 8) {
            throw new IllegalArgumentException("An orientation is 1 to 8; found: " + orientation);
        }
        if (orientation == 1) {
            return this;
        }
        boolean sideways = orientation >= 5;
        int w = sideways ? height : width;
        int h = sideways ? width : height;
        boolean fromRight = orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
        boolean fromBelow = orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
        int along = fromRight ? -1 : 1;
        int down = fromBelow ? -width : width;
        int first = (fromRight ? width - 1 : 0) + (fromBelow ? (height - 1) * width : 0);
        int stepX = sideways ? down : along;
        int stepY = sideways ? along : down;
        int[] out = new int[argb.length];
        // Strip by strip, so that a sideways picture is not fetched anew for each of its columns.
        for (int strip = 0; strip < h; strip += STRIP) {
            int end = Math.min(h, strip + STRIP);
            for (int x = 0; x < w; x++) {
                for (int y = strip, from = first + x * stepX + y * stepY; y < end; y++, from += stepY) {
                    out[y * w + x] = argb[from];
                }
            }
        }
        return new Picture(out, w, h);
    }
}
