package tenterbook.imaging.pixels;

import tenterbook.colour.palette.Pixels;

/**
 * Upright sRGB pixels, 0xAARRGGBB row by row.
 *
 * @param argb width × height values, not to be changed
 */
public record RgbPicture(int[] argb, int width, int height) implements PixelRows {
    /** So many pixels fill a line of the processor's cache. */
    private static final int CACHE_LINE = 16;

    static RgbPicture of(PixelRows rows) {
        int[] argb = new int[rows.width() * rows.height()];
        int bands = rows.bands();
        byte[] row = new byte[bands * rows.width()];
        for (int y = 0, to = 0; y < rows.height(); y++) {
            rows.row(y, row);
            for (int at = 0; at < row.length; at += bands) {
                int alpha = bands == 3 ? 255 : row[at + 3];
                argb[to++] = alpha << 24 | (row[at] & 0xff) << 16 | (row[at + 1] & 0xff) << 8 | row[at + 2] & 0xff;
            }
        }
        return new RgbPicture(argb, rows.width(), rows.height());
    }

    @Override
    public int bands() {
        int all = -1;
        for (int pixel : argb) {
            all &= pixel;
        }
        return all >>> 24 == 255 ? 3 : 4;
    }

    @Override
    public void row(int y, byte[] out) {
        boolean opaque = out.length == 3 * width;
        for (int i = y * width, at = 0; at < out.length; i++) {
            int pixel = argb[i];
            out[at++] = (byte) (pixel >> 16);
            out[at++] = (byte) (pixel >> 8);
            out[at++] = (byte) pixel;
            if (!opaque) {
                out[at++] = (byte) (pixel >> 24);
            }
        }
    }

    public Pixels pixels() {
        return new Pixels(argb, width, height);
    }

    /** This picture with its long edge reduced to {@code longEdge} pixels; itself if it is no longer than that. */
    public RgbPicture within(int longEdge) {
        return Reduction.within(this, longEdge).orElse(this);
    }

    /**
     * Turned and mirrored; see {@link ExifOrientation}. Several rows at a time: where rows become columns, one by one they
     * would touch a new place of memory with every pixel.
     *
     * @param orientation 1 to 8
     */
    RgbPicture upright(int orientation) {
        if (orientation == 1) {
            return this;
        }
        ExifOrientation turn = ExifOrientation.of(orientation, width, height);
        int[] out = new int[argb.length];
        for (int top = 0; top < height; top += CACHE_LINE) {
            int bottom = Math.min(height, top + CACHE_LINE);
            for (int x = 0; x < width; x++) {
                for (int y = top; y < bottom; y++) {
                    out[turn.first() + x * turn.along() + y * turn.down()] = argb[y * width + x];
                }
            }
        }
        return new RgbPicture(out, turn.size().width(), turn.size().height());
    }
}
