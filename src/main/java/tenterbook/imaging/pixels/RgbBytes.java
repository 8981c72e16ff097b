package tenterbook.imaging.pixels;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.WritableRaster;

/** The layout that Java's JPEG reader and writer copy as it is: opaque sRGB, a byte each of red, green, blue, row by row. */
final class RgbBytes {
    private RgbBytes() {}

    static PixelInterleavedSampleModel model(int width, int height) {
        return new PixelInterleavedSampleModel(
                DataBuffer.TYPE_BYTE, width, height, 3, Math.multiplyExact(3, width), new int[] {0, 1, 2});
    }

    /** @param raster of this layout */
    static BufferedImage image(WritableRaster raster) {
        ComponentColorModel colours = new ComponentColorModel(
                ColorSpace.getInstance(ColorSpace.CS_sRGB), false, false, Transparency.OPAQUE, DataBuffer.TYPE_BYTE);
        return new BufferedImage(colours, raster, false, null);
    }
}
