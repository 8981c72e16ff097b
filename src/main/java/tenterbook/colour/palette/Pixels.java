package tenterbook.colour.palette;

import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.RgbSpace;

/**
 * An upright picture in encoded sRGB, with the numbers of its file for measuring.
 *
 * @param argb one value per pixel, 0xAARRGGBB, not premultiplied, row by row from the top left; not to be changed
 * @param width pixels, 1 or more
 * @param height pixels, 1 or more
 * @param codes the same pixels as the file has them, where it is of wider colours than sRGB; else {@code argb} itself
 * @param space of the codes
 */
public record Pixels(int[] argb, int width, int height, int[] codes, RgbSpace space) {
    /** @throws IllegalStateException if the number of values is not width × height */
    public Pixels {
        long pixels = (long) width * height;
        if (width < 1 || height < 1 || pixels != argb.length || pixels != codes.length) {
            throw new IllegalStateException("A picture of " + width + " × " + height + " pixels needs " + pixels
                    + " values; found: " + argb.length + " and " + codes.length);
        }
    }

    /** A picture whose numbers are sRGB. */
    public Pixels(int[] argb, int width, int height) {
        this(argb, width, height, argb, RgbSpace.SRGB);
    }

    /** Linear light at a pixel, not clipped to sRGB. */
    public LinearRgb linear(int x, int y) {
        return space.linear(codes[y * width + x]);
    }
}
