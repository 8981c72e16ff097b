package tenterbook.imaging.pixels;

/**
 * Pixels turned and mirrored as they come, row after row from the top. Rows that become columns are gathered first and laid
 * down several at a time, side by side: one by one they would touch a new place of memory with every pixel.
 */
final class TurnedPixels {
    /** So many pixels fill a line of the processor's cache. */
    private static final int GATHERED = 16;

    private final ExifOrientation turn;
    private final int[] out;
    private final int width;
    private final int height;
    private final int[] rows;
    private int filled;
    private int laid;

    /**
     * @param width of the picture as it comes
     * @param orientation as in {@link ExifOrientation}
     */
    TurnedPixels(int width, int height, int orientation) {
        this.width = width;
        this.height = height;
        turn = ExifOrientation.of(orientation, width, height);
        out = new int[width * height];
        rows = new int[turn.sideways() ? GATHERED * width : 0];
    }

    /** Takes the next row from {@code from[at]} on. */
    void row(int[] from, int at) {
        if (turn.along() == 1) {
            System.arraycopy(from, at, out, turn.first() + filled * turn.down(), width);
            filled++;
        } else if (!turn.sideways()) {
            for (int x = 0, to = turn.first() + filled * turn.down(); x < width; x++, to--) {
                out[to] = from[at + x];
            }
            filled++;
        } else {
            System.arraycopy(from, at, rows, (filled - laid) * width, width);
            filled++;
            if (filled == height || filled - laid == GATHERED) {
                layColumns();
            }
        }
    }

    private void layColumns() {
        int many = filled - laid;
        int first = turn.first() + laid * turn.down();
        for (int x = 0; x < width; x++, first += turn.along()) {
            for (int y = 0, from = x, to = first; y < many; y++, from += width, to += turn.down()) {
                out[to] = rows[from];
            }
        }
        laid = filled;
    }

    /** @throws IllegalStateException if rows are wanting */
    RgbPicture picture() {
        if (filled != height) {
            throw new IllegalStateException("Only " + filled + " of " + height + " rows were given");
        }
        return new RgbPicture(out, turn.size().width(), turn.size().height());
    }
}
