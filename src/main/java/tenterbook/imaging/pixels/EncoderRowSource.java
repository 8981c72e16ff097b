package tenterbook.imaging.pixels;

import java.awt.Point;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;

/**
 * A picture for an encoder that takes row after row: each is made when it is asked for, so that the picture is never held a
 * second time. See-through pixels lie on white.
 *
 * <p>Java's JPEG encoder asks for a row at a time as a child of the raster. Whatever else is asked of this is refused.
 */
final class EncoderRowSource extends WritableRaster {
    private final RgbPicture picture;

    private EncoderRowSource(RgbPicture picture) {
        super(RgbBytes.model(picture.width(), picture.height()), new DataBufferByte(1), new Point(0, 0));
        this.picture = picture;
    }

    /** The bytes of a row stand as red, green, blue, which the encoder copies; any other order it takes apart by pixels. */
    static BufferedImage of(RgbPicture picture) {
        return RgbBytes.image(new EncoderRowSource(picture));
    }

    @Override
    public Raster createChild(int x, int y, int wide, int high, int toX, int toY, int[] bands) {
        if (x != 0 || wide != width || high != 1 || bands != null && bands.length != 3) {
            throw new UnsupportedOperationException("Only whole rows are given; asked for: " + wide + " × " + high
                    + " pixels from " + x + ", " + y + " of " + width + " × " + height);
        }
        int[] argb = picture.argb();
        int from = y * width;
        int all = -1;
        for (int i = 0; i < width; i++) {
            all &= argb[from + i];
        }
        boolean opaque = all >>> 24 == 255;
        byte[] rgb = new byte[3 * width];
        for (int i = 0; i < width; i++) {
            int pixel = opaque ? argb[from + i] : onWhite(argb[from + i]);
            rgb[3 * i] = (byte) (pixel >> 16);
            rgb[3 * i + 1] = (byte) (pixel >> 8);
            rgb[3 * i + 2] = (byte) pixel;
        }
        return Raster.createWritableRaster(
                RgbBytes.model(width, 1), new DataBufferByte(rgb, rgb.length), new Point(toX, toY));
    }

    private static int onWhite(int pixel) {
        int alpha = pixel >>> 24;
        int out = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            out = out << 8 | ((pixel >> shift & 0xff) * alpha + 255 * (255 - alpha) + 127) / 255;
        }
        return out;
    }
}
