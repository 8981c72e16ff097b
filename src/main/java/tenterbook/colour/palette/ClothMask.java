package tenterbook.colour.palette;

import java.util.Arrays;
import java.util.List;

/** Which cells of a picture show the cloth: not the backdrop that reaches the picture's edge, not what is left out. */
final class ClothMask {
    private static final double ALIKE = 12;
    private static final double COMMON = 0.12;
    private static final int GROUPS = 4;

    private ClothMask() {}

    static boolean[] of(LabRaster raster, List<Region> leaveOut, boolean surrounded) {
        boolean[] cloth = new boolean[raster.size()];
        Arrays.fill(cloth, true);
        if (surrounded) {
            flood(raster, cloth, backdrop(raster, leaveOut));
        }
        for (int cell = 0; cell < cloth.length; cell++) {
            cloth[cell] &= !leftOut(raster, leaveOut, cell);
        }
        return surrounded ? withoutRim(raster, largest(raster, cloth)) : cloth;
    }

    private static boolean leftOut(LabRaster raster, List<Region> leaveOut, int cell) {
        double x = raster.across(cell % raster.width() + 0.5);
        double y = raster.down(cell / raster.width() + 0.5);
        return leaveOut.stream().anyMatch(region -> region.contains(x, y));
    }

    /** The common colours along the picture's edge. */
    private static double[][] backdrop(LabRaster raster, List<Region> leaveOut) {
        int[] edge = edge(raster);
        double[] values = new double[3 * edge.length];
        int filled = 0;
        for (int cell : edge) {
            if (!leftOut(raster, leaveOut, cell)) {
                values[filled++] = raster.lightness(cell);
                values[filled++] = raster.a(cell);
                values[filled++] = raster.b(cell);
            }
        }
        if (filled == 0) {
            return new double[0][];
        }
        LabSample sample = LabSample.of(Arrays.copyOf(values, filled));
        Clusters groups = Clusters.of(sample, Math.min(GROUPS, sample.size));
        return java.util.stream.IntStream.range(0, groups.counts.length)
                .filter(g -> groups.counts[g] >= COMMON * sample.size)
                .mapToObj(g -> Arrays.copyOfRange(groups.means, 3 * g, 3 * g + 3))
                .toArray(double[][]::new);
    }

    private static void flood(LabRaster raster, boolean[] cloth, double[][] backdrop) {
        int[] queue = new int[raster.size()];
        int tail = 0;
        for (int cell : edge(raster)) {
            if (cloth[cell] && isBackdrop(raster, cell, backdrop)) {
                cloth[cell] = false;
                queue[tail++] = cell;
            }
        }
        for (int head = 0; head < tail; head++) {
            for (int next : beside(raster, queue[head])) {
                if (next >= 0 && cloth[next] && isBackdrop(raster, next, backdrop)) {
                    cloth[next] = false;
                    queue[tail++] = next;
                }
            }
        }
    }

    /** Lightness counts half, because a shadow on the backdrop is still backdrop. */
    private static boolean isBackdrop(LabRaster raster, int cell, double[][] backdrop) {
        for (double[] mean : backdrop) {
            double l = (raster.lightness(cell) - mean[0]) / 2;
            double a = raster.a(cell) - mean[1];
            double b = raster.b(cell) - mean[2];
            if (l * l + a * a + b * b < ALIKE * ALIKE) {
                return true;
            }
        }
        return false;
    }

    /** The largest connected part, so that tickets and pegs lying apart are no cloth. */
    private static boolean[] largest(LabRaster raster, boolean[] cloth) {
        int[] queue = new int[raster.size()];
        boolean[] seen = new boolean[raster.size()];
        int[] best = new int[0];
        for (int start = 0; start < cloth.length; start++) {
            if (!cloth[start] || seen[start]) {
                continue;
            }
            int tail = 0;
            queue[tail++] = start;
            seen[start] = true;
            for (int head = 0; head < tail; head++) {
                for (int next : beside(raster, queue[head])) {
                    if (next >= 0 && cloth[next] && !seen[next]) {
                        seen[next] = true;
                        queue[tail++] = next;
                    }
                }
            }
            if (tail > best.length) {
                best = Arrays.copyOf(queue, tail);
            }
        }
        boolean[] out = new boolean[cloth.length];
        for (int cell : best) {
            out[cell] = true;
        }
        return out;
    }

    /** Cells at the cloth's edge show the backdrop as well. */
    private static boolean[] withoutRim(LabRaster raster, boolean[] cloth) {
        boolean[] out = new boolean[cloth.length];
        for (int cell = 0; cell < cloth.length; cell++) {
            out[cell] = cloth[cell];
            for (int next : beside(raster, cell)) {
                out[cell] &= next >= 0 && cloth[next];
            }
        }
        return out;
    }

    /** Left, right, above, below; -1 outside the picture. */
    static int[] beside(LabRaster raster, int cell) {
        int w = raster.width();
        int x = cell % w;
        return new int[] {
            x > 0 ? cell - 1 : -1,
            x < w - 1 ? cell + 1 : -1,
            cell >= w ? cell - w : -1,
            cell + w < raster.size() ? cell + w : -1
        };
    }

    private static int[] edge(LabRaster raster) {
        return java.util.stream.IntStream.range(0, raster.size())
                .filter(cell -> Arrays.stream(beside(raster, cell)).anyMatch(next -> next < 0))
                .toArray();
    }
}
