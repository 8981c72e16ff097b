package tenterbook.colour.target;

import java.util.ArrayList;
import java.util.List;
import tenterbook.colour.palette.LabRaster;

/** Connected parts of even colour, nearly grey unless any is wanted, grown cell by cell. */
final class EvenParts {
    /** Greatest chroma of a grey card under coloured light. */
    private static final double MOST_CHROMA = 20;

    private static final double DARKEST = 22;
    private static final double LIGHTEST = 84;
    private static final double STEP = 2.4;
    private static final double FROM_MEAN = 4.5;

    private final LabRaster raster;
    private final boolean anyColour;
    private final boolean[] taken;
    private final int[] queue;

    /** Cells of one part, its mean colour, and the standard deviation of L about a plane. */
    record EvenPatch(int[] cells, double lightness, double a, double b, double unevenness) {
        double chroma() {
            return Math.hypot(a, b);
        }
    }

    EvenParts(LabRaster raster) {
        this(raster, false);
    }

    /** Those of any colour and lightness too. */
    static EvenParts ofAnyColour(LabRaster raster) {
        return new EvenParts(raster, true);
    }

    private EvenParts(LabRaster raster, boolean anyColour) {
        this.raster = raster;
        this.anyColour = anyColour;
        this.taken = new boolean[raster.size()];
        this.queue = new int[raster.size()];
    }

    /** Parts with at least {@code fewest} and at most {@code most} cells. */
    List<EvenPatch> grow(int fewest, int most) {
        List<EvenPatch> parts = new ArrayList<>();
        for (int seed = 0; seed < raster.size(); seed++) {
            if (!taken[seed] && wanted(seed)) {
                int cells = fill(seed);
                if (cells >= fewest && cells <= most) {
                    parts.add(part(cells));
                }
            }
        }
        return parts;
    }

    private int fill(int seed) {
        int w = raster.width();
        double[] mean = {raster.lightness(seed), raster.a(seed), raster.b(seed)};
        int tail = 0;
        queue[tail++] = seed;
        taken[seed] = true;
        for (int head = 0; head < tail; head++) {
            int cell = queue[head];
            int x = cell % w;
            int[] beside = {x > 0 ? cell - 1 : -1, x < w - 1 ? cell + 1 : -1, cell - w, cell + w};
            for (int next : beside) {
                if (next >= 0 && next < taken.length && !taken[next] && joins(next, cell, mean)) {
                    taken[next] = true;
                    queue[tail++] = next;
                    mean[0] += (raster.lightness(next) - mean[0]) / tail;
                    mean[1] += (raster.a(next) - mean[1]) / tail;
                    mean[2] += (raster.b(next) - mean[2]) / tail;
                }
            }
        }
        return tail;
    }

    private boolean joins(int next, int from, double[] mean) {
        return wanted(next)
                && raster.squared(next, raster.lightness(from), raster.a(from), raster.b(from)) < STEP * STEP
                && raster.squared(next, mean[0], mean[1], mean[2]) < FROM_MEAN * FROM_MEAN;
    }

    private boolean wanted(int cell) {
        if (anyColour) {
            return true;
        }
        double lightness = raster.lightness(cell);
        double a = raster.a(cell);
        double b = raster.b(cell);
        return lightness > DARKEST && lightness < LIGHTEST && a * a + b * b < MOST_CHROMA * MOST_CHROMA;
    }

    private EvenPatch part(int count) {
        int[] cells = java.util.Arrays.copyOf(queue, count);
        double l = 0;
        double a = 0;
        double b = 0;
        for (int cell : cells) {
            l += raster.lightness(cell) / count;
            a += raster.a(cell) / count;
            b += raster.b(cell) / count;
        }
        int[] inner = interior(cells);
        return new EvenPatch(cells, l, a, b, rest(inner.length > cells.length / 2 ? inner : cells, l));
    }

    /** Without the cells at its border, which also show the surroundings. */
    private int[] interior(int[] cells) {
        java.util.BitSet own = new java.util.BitSet(raster.size());
        for (int cell : cells) {
            own.set(cell);
        }
        int w = raster.width();
        return java.util.Arrays.stream(cells)
                .filter(cell -> cell >= w && own.get(cell - w) && own.get(cell + w))
                .filter(cell -> cell % w > 0 && own.get(cell - 1) && own.get(cell + 1))
                .toArray();
    }

    /** Standard deviation of the lightness from a plane: small for a card in slanting light, not for stone and cloth. */
    private double rest(int[] cells, double mean) {
        int w = raster.width();
        double mx = 0;
        double my = 0;
        for (int cell : cells) {
            mx += (double) (cell % w) / cells.length;
            my += (double) (cell / w) / cells.length;
        }
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double xl = 0;
        double yl = 0;
        for (int cell : cells) {
            double x = cell % w - mx;
            double y = cell / w - my;
            double l = raster.lightness(cell) - mean;
            xx += x * x;
            xy += x * y;
            yy += y * y;
            xl += x * l;
            yl += y * l;
        }
        double d = xx * yy - xy * xy;
        double gx = d > 0 ? (xl * yy - yl * xy) / d : 0;
        double gy = d > 0 ? (yl * xx - xl * xy) / d : 0;
        double squares = 0;
        for (int cell : cells) {
            double l = raster.lightness(cell) - mean - gx * (cell % w - mx) - gy * (cell / w - my);
            squares += l * l / cells.length;
        }
        return Math.sqrt(squares);
    }
}
