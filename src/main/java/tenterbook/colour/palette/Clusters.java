package tenterbook.colour.palette;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Groups of like colours among sampled pixels: k-means in CIELAB with careful seeding (Arthur and Vassilvitskii 2007,
 * "k-means++") and a fixed random seed, so that one picture always gives one answer.
 */
final class Clusters {
    private static final long SEED = 20240229L;
    private static final int ROUNDS = 20;

    /** Means as L, a, b, L, a, b, ...; a group that stayed empty keeps its place with count 0. */
    final double[] means;

    final int[] counts;

    private Clusters(int groups) {
        means = new double[groups * 3];
        counts = new int[groups];
    }

    static Clusters of(LabSample sample, int groups) {
        Clusters clusters = new Clusters(groups);
        clusters.plant(sample);
        int[] group = new int[sample.size];
        Arrays.fill(group, -1);
        Bounds bounds = new Bounds(sample.size);
        for (int round = 0; round < ROUNDS && clusters.assign(sample, group, bounds); round++) {
            double[] before = clusters.means.clone();
            clusters.recentre(sample, group);
            bounds.loosen(clusters, before, group);
        }
        clusters.recentre(sample, group);
        return clusters;
    }

    /**
     * For each pixel, no less than the distance to its own mean and no more than that to any other: while the first is
     * below the second it stays where it is, and nothing need be computed (Hamerly 2010, "Making k-means even faster").
     */
    private static final class Bounds {
        /** Wider than any rounding, so that the answer is the same as without bounds. */
        private static final double SLACK = 1e-6;

        private final double[] own;
        private final double[] other;

        Bounds(int size) {
            own = new double[size];
            other = new double[size];
        }

        void loosen(Clusters clusters, double[] before, int[] group) {
            double[] moved = new double[clusters.counts.length];
            double most = 0;
            for (int g = 0; g < moved.length; g++) {
                moved[g] = Math.sqrt(clusters.squared(before, 3 * g, 3 * g)) + SLACK;
                most = Math.max(most, moved[g]);
            }
            for (int i = 0; i < group.length; i++) {
                own[i] += moved[group[i]];
                other[i] -= most;
            }
        }
    }

    private void plant(LabSample sample) {
        SplittableRandom random = new SplittableRandom(SEED);
        double[] nearest = new double[sample.size];
        Arrays.fill(nearest, Double.MAX_VALUE);
        int chosen = random.nextInt(sample.size);
        for (int g = 0; g < counts.length; g++) {
            System.arraycopy(sample.values, 3 * chosen, means, 3 * g, 3);
            double total = 0;
            for (int i = 0; i < sample.size; i++) {
                nearest[i] = Math.min(nearest[i], squared(sample.values, 3 * i, 3 * g));
                total += nearest[i];
            }
            double mark = random.nextDouble() * total;
            chosen = 0;
            for (double passed = nearest[0]; passed < mark && chosen < sample.size - 1; passed += nearest[chosen]) {
                chosen++;
            }
        }
    }

    /** Gives each pixel to its nearest mean; true if any changed its group. */
    private boolean assign(LabSample sample, int[] group, Bounds bounds) {
        boolean changed = false;
        for (int i = 0; i < sample.size; i++) {
            if (group[i] >= 0 && settled(sample, i, group[i], bounds)) {
                continue;
            }
            int best = 0;
            double least = Double.MAX_VALUE;
            double second = Double.MAX_VALUE;
            for (int g = 0; g < counts.length; g++) {
                double distance = squared(sample.values, 3 * i, 3 * g);
                if (distance < least) {
                    second = least;
                    least = distance;
                    best = g;
                } else {
                    second = Math.min(second, distance);
                }
            }
            bounds.own[i] = Math.sqrt(least);
            bounds.other[i] = Math.sqrt(second);
            changed |= group[i] != best;
            group[i] = best;
        }
        return changed;
    }

    private boolean settled(LabSample sample, int i, int group, Bounds bounds) {
        if (bounds.own[i] < bounds.other[i]) {
            return true;
        }
        bounds.own[i] = Math.sqrt(squared(sample.values, 3 * i, 3 * group));
        return bounds.own[i] < bounds.other[i];
    }

    private void recentre(LabSample sample, int[] group) {
        double[] sums = new double[means.length];
        Arrays.fill(counts, 0);
        for (int i = 0; i < sample.size; i++) {
            counts[group[i]]++;
            for (int axis = 0; axis < 3; axis++) {
                sums[3 * group[i] + axis] += sample.values[3 * i + axis];
            }
        }
        for (int g = 0; g < counts.length; g++) {
            for (int axis = 0; axis < 3 && counts[g] > 0; axis++) {
                means[3 * g + axis] = sums[3 * g + axis] / counts[g];
            }
        }
    }

    private double squared(double[] values, int at, int mean) {
        double l = values[at] - means[mean];
        double a = values[at + 1] - means[mean + 1];
        double b = values[at + 2] - means[mean + 2];
        return l * l + a * a + b * b;
    }
}
