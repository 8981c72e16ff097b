package tenterbook.imaging;

import java.util.function.DoubleBinaryOperator;
import tenterbook.colour.palette.Pixels;
import tenterbook.imaging.pixels.Jpeg;
import tenterbook.imaging.pixels.RgbPicture;

/** One picture as it lies on another, for a slider between the two. */
public final class OverlaidPicture {
    /** Where the upper picture does not reach: a neutral beige. */
    private static final int BESIDE = 0xffd9cfbd;

    private OverlaidPicture() {}

    /**
     * A JPEG of the size of the lower picture.
     *
     * @param width of the lower picture, in pixels
     * @param height of the lower picture, in pixels
     * @param across from a pixel of the lower picture to the column of the upper one that lies on it
     * @param down likewise to the row
     */
    public static byte[] jpeg(
            int width, int height, Pixels above, DoubleBinaryOperator across, DoubleBinaryOperator down) {
        int[] argb = new int[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                long column = Math.round(across.applyAsDouble(x, y));
                long row = Math.round(down.applyAsDouble(x, y));
                boolean inside = column >= 0 && row >= 0 && column < above.width() && row < above.height();
                argb[y * width + x] = inside ? above.argb()[(int) row * above.width() + (int) column] : BESIDE;
            }
        }
        return Jpeg.encode(new RgbPicture(argb, width, height), Previews.QUALITY);
    }
}
