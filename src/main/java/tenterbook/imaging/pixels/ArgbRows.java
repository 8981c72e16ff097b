package tenterbook.imaging.pixels;

/** Rows of pixels that are held already. */
record ArgbRows(int[] argb, int width, int height) implements PixelRows {
    @Override
    public boolean opaque() {
        int all = -1;
        for (int pixel : argb) {
            all &= pixel;
        }
        return all >>> 24 == 255;
    }

    @Override
    public void row(int y, int[] out) {
        System.arraycopy(argb, y * width, out, 0, width);
    }
}
