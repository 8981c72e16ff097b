package tenterbook.imaging.pixels;

import tenterbook.colour.palette.Pixels;

/**
 * Upright sRGB pixels, 0xAARRGGBB row by row.
 *
 * @param argb width × height values, not to be changed
 */
public record RgbPicture(int[] argb, int width, int height) {
    public Pixels pixels() {
        return new Pixels(argb, width, height);
    }

    /** This picture with its long edge reduced to {@code longEdge} pixels; itself if it is no longer than that. */
    RgbPicture within(int longEdge) {
        return Reduction.within(new ArgbRows(argb, width, height), longEdge).orElse(this);
    }

    /**
     * Turned and mirrored; see {@link ExifOrientation}.
     *
     * @param orientation 1 to 8
     */
    RgbPicture upright(int orientation) {
        if (orientation == 1) {
            return this;
        }
        TurnedPixels turned = new TurnedPixels(width, height, orientation);
        for (int y = 0; y < height; y++) {
            turned.row(argb, y * width);
        }
        return turned.picture();
    }
}
