package tenterbook.colour.palette;

import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.SrgbCurve;

/**
 * An upright picture in encoded sRGB.
 *
 * @param argb one value per pixel, 0xAARRGGBB, not premultiplied, row by row from the top left; not to be changed
 * @param width pixels, 1 or more
 * @param height pixels, 1 or more
 */
public record Pixels(int[] argb, int width, int height) {
    /** @throws IllegalStateException if the number of values is not width × height */
    public Pixels {
        if (width < 1 || height < 1 || (long) width * height != argb.length) {
            throw new IllegalStateException("A picture of " + width + " × " + height + " pixels needs "
                    + (long) width * height + " values; found: " + argb.length);
        }
    }

    /** Linear light at a pixel. */
    public LinearRgb linear(int x, int y) {
        int pixel = argb[y * width + x];
        return new LinearRgb(
                SrgbCurve.linear(pixel >> 16 & 0xff),
                SrgbCurve.linear(pixel >> 8 & 0xff),
                SrgbCurve.linear(pixel & 0xff));
    }
}
