package tenterbook.colour.compare;

/**
 * An upright picture in sRGB.
 *
 * @param argb one value per pixel, 0xAARRGGBB, row by row from the top left; not copied, so it must not be changed
 * @param width pixels, 1 or more
 * @param height pixels, 1 or more
 */
public record ComparedPicture(int[] argb, int width, int height) {
    /** @throws IllegalStateException if the number of values is not width × height */
    public ComparedPicture {
        if (width < 1 || height < 1 || (long) width * height != argb.length) {
            throw new IllegalStateException("A picture of %d × %d pixels needs %d values; found: %d"
                    .formatted(width, height, (long) width * height, argb.length));
        }
    }
}
