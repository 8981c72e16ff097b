package tenterbook.colour.compare;

import java.util.ArrayList;
import java.util.List;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.Srgb;

/**
 * A region cut into a grid of tiles, each with its mean colour in both pictures over the same cloth.
 *
 * @param seen share of the region's pixels that the later picture shows, 0 to 1; 0 for an empty region
 */
record Tiles(List<Tile> tiles, double seen) {
    private static final int ACROSS = 6;
    /** Least share of a full tile's pixels that a tile at the region's edge must have. */
    private static final double LEAST_SHARE = 0.25;

    private static final int MOST_PIXELS = 60_000;

    /** Means of one tile. */
    record Tile(Lab before, Lab after) {}

    static Tiles of(ComparedPicture before, ComparedPicture after, Alignment alignment, Region region) {
        int left = before.width();
        int top = before.height();
        int right = -1;
        int bottom = -1;
        for (Region.Corner corner : region.corners()) {
            left = Math.min(left, (int) Math.floor(corner.x() * before.width()));
            right = Math.max(right, (int) Math.ceil(corner.x() * before.width()));
            top = Math.min(top, (int) Math.floor(corner.y() * before.height()));
            bottom = Math.max(bottom, (int) Math.ceil(corner.y() * before.height()));
        }
        int step = (int) Math.max(1, Math.sqrt((right - left) * (double) (bottom - top) / MOST_PIXELS));
        double[][] sums = new double[ACROSS * ACROSS][7];
        long inside = 0;
        long seen = 0;
        for (int y = top; y < bottom; y += step) {
            for (int x = left; x < right; x += step) {
                int p = before.argb()[y * before.width() + x];
                if (p >>> 24 < 128 || !region.contains((x + 0.5) / before.width(), (y + 0.5) / before.height())) {
                    continue;
                }
                inside++;
                int u = (int) Math.round(alignment.x(x, y));
                int v = (int) Math.round(alignment.y(x, y));
                if (u < 0 || v < 0 || u >= after.width() || v >= after.height()) {
                    continue;
                }
                int q = after.argb()[v * after.width() + u];
                if (q >>> 24 >= 128) {
                    seen++;
                    int tile = ACROSS * (ACROSS * (y - top) / (bottom - top)) + ACROSS * (x - left) / (right - left);
                    add(sums[tile], Srgb.ofRgb(p).lab(), Srgb.ofRgb(q).lab());
                }
            }
        }
        return new Tiles(means(sums), inside == 0 ? 0 : (double) seen / inside);
    }

    private static void add(double[] sum, Lab one, Lab other) {
        double[] six = {one.lightness(), one.a(), one.b(), other.lightness(), other.a(), other.b()};
        for (int k = 0; k < 6; k++) {
            sum[k] += six[k];
        }
        sum[6]++;
    }

    private static List<Tile> means(double[][] sums) {
        double full = 0;
        for (double[] sum : sums) {
            full = Math.max(full, sum[6]);
        }
        List<Tile> tiles = new ArrayList<>();
        for (double[] s : sums) {
            double n = s[6];
            if (n > 0 && n >= LEAST_SHARE * full) {
                tiles.add(new Tile(new Lab(s[0] / n, s[1] / n, s[2] / n), new Lab(s[3] / n, s[4] / n, s[5] / n)));
            }
        }
        return tiles;
    }
}
