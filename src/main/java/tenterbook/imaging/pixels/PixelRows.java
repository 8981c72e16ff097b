package tenterbook.imaging.pixels;

/** A picture that can be read row by row, so that a large one need not be copied to be reduced. */
interface PixelRows {
    int width();

    int height();

    /** Whether every pixel is known to be opaque. */
    boolean opaque();

    /** Fills {@code out} with the row's pixels, 0xAARRGGBB, not premultiplied; rows may be asked for in order only. */
    void row(int y, int[] out);
}
