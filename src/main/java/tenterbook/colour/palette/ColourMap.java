package tenterbook.colour.palette;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tenterbook.colour.space.Ciede2000;

/** Gives each cell of the cloth to one of a few colours, and takes out single strays. */
final class ColourMap {
    private static final int GROUPS = 8;
    private static final double ALIKE = 9;
    private static final double TINY = 0.012;
    private static final int SWEEPS = 2;

    /** Of each colour: L, a, b and how many cells began with it. */
    final List<double[]> colours;

    /** Index of a colour, or -1 off the cloth. */
    final int[] label;

    private final LabRaster raster;

    ColourMap(LabRaster raster, boolean[] cloth) {
        this.raster = raster;
        this.colours = colours(raster, cloth);
        this.label = new int[raster.size()];
        for (int cell = 0; cell < label.length; cell++) {
            label[cell] = cloth[cell] ? nearest(cell) : -1;
        }
        for (int sweep = 0; sweep < SWEEPS; sweep++) {
            byMajority();
        }
    }

    private static List<double[]> colours(LabRaster raster, boolean[] cloth) {
        LabSample sample = LabSample.of(raster, cloth, LabSample.MOST);
        Clusters clusters = Clusters.of(sample, Math.min(GROUPS, sample.size));
        List<double[]> groups = new ArrayList<>();
        for (int g = 0; g < clusters.counts.length; g++) {
            if (clusters.counts[g] > 0) {
                double[] m = clusters.means;
                groups.add(new double[] {m[3 * g], m[3 * g + 1], m[3 * g + 2], clusters.counts[g]});
            }
        }
        while (merge(groups)) {}
        groups.removeIf(group -> group[3] < TINY * sample.size);
        dropShades(groups);
        return groups;
    }

    /** Merges the two most alike, if alike enough. */
    private static boolean merge(List<double[]> groups) {
        double least = ALIKE;
        double[] keep = null;
        double[] drop = null;
        for (int i = 0; i < groups.size(); i++) {
            for (int j = i + 1; j < groups.size(); j++) {
                double[] p = groups.get(i);
                double[] q = groups.get(j);
                double difference = Ciede2000.difference(p[0], p[1], p[2], q[0], q[1], q[2]);
                if (difference < least) {
                    least = difference;
                    keep = p;
                    drop = q;
                }
            }
        }
        if (keep == null) {
            return false;
        }
        double t = drop[3] / (keep[3] + drop[3]);
        for (int k = 0; k < 3; k++) {
            keep[k] += t * (drop[k] - keep[k]);
        }
        keep[3] += drop[3];
        groups.remove(drop);
        return true;
    }

    /** A group between two larger ones is the soft border between them and no colour of its own. */
    private static void dropShades(List<double[]> groups) {
        for (double[] shade : List.copyOf(groups)) {
            boolean between = groups.stream()
                    .filter(p -> p != shade && p[3] > shade[3])
                    .anyMatch(p -> groups.stream()
                            .filter(q -> q != shade && q != p && q[3] > shade[3] / 2)
                            .anyMatch(q -> between(shade, p, q)));
            if (between) {
                groups.remove(shade);
            }
        }
    }

    private static boolean between(double[] shade, double[] p, double[] q) {
        double length = 0;
        double along = 0;
        for (int k = 0; k < 3; k++) {
            length += (q[k] - p[k]) * (q[k] - p[k]);
            along += (shade[k] - p[k]) * (q[k] - p[k]);
        }
        double t = along / length;
        if (!(t > 0.15 && t < 0.85)) {
            return false;
        }
        double off = 0;
        for (int k = 0; k < 3; k++) {
            double d = shade[k] - p[k] - t * (q[k] - p[k]);
            off += d * d;
        }
        return Math.sqrt(off) < Math.max(7, 0.15 * Math.sqrt(length));
    }

    private int nearest(int cell) {
        int best = 0;
        double least = Double.MAX_VALUE;
        for (int g = 0; g < colours.size(); g++) {
            double[] c = colours.get(g);
            double d = raster.squared(cell, c[0], c[1], c[2]);
            if (d < least) {
                least = d;
                best = g;
            }
        }
        return best;
    }

    /** Each cell takes the label that most of the nine around it have, its own where there is a draw. */
    private void byMajority() {
        int[] old = label.clone();
        int w = raster.width();
        int h = raster.height();
        int[] votes = new int[colours.size()];
        for (int cell = 0; cell < old.length; cell++) {
            if (old[cell] < 0) {
                continue;
            }
            Arrays.fill(votes, 0);
            for (int y = Math.max(0, cell / w - 1); y <= Math.min(h - 1, cell / w + 1); y++) {
                for (int x = Math.max(0, cell % w - 1); x <= Math.min(w - 1, cell % w + 1); x++) {
                    if (old[y * w + x] >= 0) {
                        votes[old[y * w + x]]++;
                    }
                }
            }
            for (int g = 0; g < votes.length; g++) {
                if (votes[g] > votes[label[cell]]) {
                    label[cell] = g;
                }
            }
        }
    }
}
