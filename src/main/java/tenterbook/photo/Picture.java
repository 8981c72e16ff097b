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
    /** This picture with its long edge reduced to {@code longEdge} pixels; itself if it is no longer than that. */
    Picture within(int longEdge) {
        return Reduction.within(new ArgbRows(argb, width, height), longEdge).orElse(this);
    }

    /**
     * For encoding: opaque, on white where the original was see-through. The bytes stand as red, green, blue, which the
     * encoder copies row by row; any other order it takes apart pixel by pixel.
     */
    BufferedImage opaque() {
        boolean solid = new ArgbRows(argb, width, height).opaque();
        byte[] rgb = new byte[3 * argb.length];
        for (int i = 0, at = 0; i < argb.length; i++, at += 3) {
            int pixel = solid ? argb[i] : onWhite(argb[i], argb[i] >>> 24);
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
     * Turned and mirrored; see {@link Turn}.
     *
     * @param orientation 1 to 8
     */
    Picture upright(int orientation) {
        if (orientation == 1) {
            return this;
        }
        Turn turn = Turn.of(orientation, width, height);
        int[] out = new int[argb.length];
        for (int y = 0, from = 0; y < height; y++) {
            int to = turn.first() + y * turn.down();
            for (int x = 0; x < width; x++, to += turn.along()) {
                out[to] = argb[from++];
            }
        }
        return new Picture(out, turn.size().width(), turn.size().height());
    }
}
