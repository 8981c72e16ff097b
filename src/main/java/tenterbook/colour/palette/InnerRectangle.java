package tenterbook.colour.palette;

/** The largest upright rectangle of cells with one label, by the histogram method, row by row. */
final class InnerRectangle {
    private InnerRectangle() {}

    static Region of(LabRaster raster, int[] label, int wanted) {
        int w = raster.width();
        int[] tall = new int[w + 1];
        int[] stack = new int[w + 1];
        int best = 0;
        int[] found = {0, 0, 1, 1};
        for (int y = 0; y < raster.height(); y++) {
            int depth = 0;
            for (int x = 0; x <= w; x++) {
                tall[x] = x < w && label[y * w + x] == wanted ? tall[x] + 1 : 0;
                while (depth > 0 && tall[stack[depth - 1]] >= tall[x]) {
                    int height = tall[stack[--depth]];
                    int left = depth == 0 ? 0 : stack[depth - 1] + 1;
                    if (height * (x - left) > best) {
                        best = height * (x - left);
                        found = new int[] {left, y - height + 1, x, y + 1};
                    }
                }
                stack[depth++] = x;
            }
        }
        return Region.rectangle(
                raster.across(found[0]), raster.down(found[1]), raster.across(found[2]), raster.down(found[3]));
    }
}
