package tenterbook.imaging.pixels;

/** A picture that can be read row by row, so that a large one need not be copied to be reduced. */
interface PixelRows {
    int width();

    int height();

    /** 3: red, green, blue. 4: the same, not premultiplied, and opacity. */
    int bands();

    /** Fills {@code out} with the row's pixels, {@link #bands} bytes each. */
    void row(int y, byte[] out);
}
