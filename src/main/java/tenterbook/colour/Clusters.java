package tenterbook.colour;

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
        for (int round = 0; round < ROUNDS && clusters.assign(sample, group); round++) {
            clusters.recentre(sample, group);
        }
        clusters.recentre(sample, group);
        return clusters;
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
    private boolean assign(LabSample sample, int[] group) {
        boolean changed = false;
        for (int i = 0; i < sample.size; i++) {
            int best = 0;
            double least = Double.MAX_VALUE;
            for (int g = 0; g < counts.length; g++) {
                double distance = squared(sample.values, 3 * i, 3 * g);
                if (distance < least) {
                    least = distance;
                    best = g;
                }
            }
            changed |= group[i] != best;
            group[i] = best;
        }
        return changed;
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
