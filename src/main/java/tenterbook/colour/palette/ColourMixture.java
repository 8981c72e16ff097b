package tenterbook.colour.palette;

/**
 * How the colours of some cells of a picture are spread: a few normal distributions in CIELAB, each with its own covariance,
 * fitted to groups of like colours. The same cells always give the same mixture.
 */
public final class ColourMixture {
    private static final int MOST = 6000;
    /** Variance of a colour measured on one cell: no group is taken to be narrower. */
    private static final double LEAST_VARIANCE = 2;

    private final int groups;
    private final double[] means;
    /** Inverse covariance of each group: LL, La, Lb, aa, ab, bb. */
    private final double[] inverse;

    /** Cost of a group at its mean: what its share and its width make of it. */
    private final double[] atMean;

    private ColourMixture(LabSample sample, Clusters clusters) {
        groups = clusters.counts.length;
        means = clusters.means;
        inverse = new double[6 * groups];
        atMean = new double[groups];
        double[] sums = new double[6 * groups];
        for (int i = 0; i < sample.size; i++) {
            add(sample.values, 3 * i, nearest(sample.values, 3 * i, clusters.counts), sums);
        }
        for (int g = 0; g < groups; g++) {
            if (clusters.counts[g] == 0) {
                atMean[g] = Double.POSITIVE_INFINITY;
                continue;
            }
            double[] c = new double[6];
            for (int k = 0; k < 6; k++) {
                c[k] = sums[6 * g + k] / clusters.counts[g] + (k == 0 || k == 3 || k == 5 ? LEAST_VARIANCE : 0);
            }
            double determinant = invert(c, 6 * g);
            atMean[g] = 0.5 * Math.log(determinant) - Math.log((double) clusters.counts[g] / sample.size);
        }
    }

    /** @param wanted at least one of the cells */
    public static ColourMixture of(LabRaster raster, boolean[] wanted, int groups) {
        LabSample sample = LabSample.of(raster, wanted, MOST);
        return new ColourMixture(sample, Clusters.of(sample, Math.min(groups, sample.size)));
    }

    private int nearest(double[] values, int at, int[] counts) {
        int best = 0;
        double least = Double.MAX_VALUE;
        for (int g = 0; g < groups; g++) {
            double l = values[at] - means[3 * g];
            double a = values[at + 1] - means[3 * g + 1];
            double b = values[at + 2] - means[3 * g + 2];
            double d = l * l + a * a + b * b;
            if (counts[g] > 0 && d < least) {
                least = d;
                best = g;
            }
        }
        return best;
    }

    private void add(double[] values, int at, int group, double[] sums) {
        double l = values[at] - means[3 * group];
        double a = values[at + 1] - means[3 * group + 1];
        double b = values[at + 2] - means[3 * group + 2];
        double[] products = {l * l, l * a, l * b, a * a, a * b, b * b};
        for (int k = 0; k < 6; k++) {
            sums[6 * group + k] += products[k];
        }
    }

    /** Writes the inverse of a symmetric matrix and gives its determinant. */
    private double invert(double[] c, int at) {
        double ll = c[3] * c[5] - c[4] * c[4];
        double la = c[2] * c[4] - c[1] * c[5];
        double lb = c[1] * c[4] - c[2] * c[3];
        double determinant = c[0] * ll + c[1] * la + c[2] * lb;
        double[] adjoint = {ll, la, lb, c[0] * c[5] - c[2] * c[2], c[1] * c[2] - c[0] * c[4], c[0] * c[3] - c[1] * c[1]
        };
        for (int k = 0; k < 6; k++) {
            inverse[at + k] = adjoint[k] / determinant;
        }
        return determinant;
    }

    /** Minus the logarithm of how often the likeliest group gives such a colour, up to a constant that all mixtures share. */
    public double cost(double lightness, double a, double b) {
        double least = Double.POSITIVE_INFINITY;
        for (int g = 0; g < groups; g++) {
            // No colour costs less than the group's mean.
            if (atMean[g] < least) {
                least = Math.min(least, atMean[g] + squared(g, lightness, a, b) / 2);
            }
        }
        return least;
    }

    /** The least cost of any colour. */
    public double leastCost() {
        double least = Double.POSITIVE_INFINITY;
        for (double each : atMean) {
            least = Math.min(least, each);
        }
        return least;
    }

    /** The likeliest group of such a colour, from 0. */
    public int group(double lightness, double a, double b) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int g = 0; g < groups; g++) {
            double cost = atMean[g] + squared(g, lightness, a, b) / 2;
            if (cost < least) {
                least = cost;
                best = g;
            }
        }
        return best;
    }

    /**
     * Whether a colour lies farther than so much from every group, as the square of its distance in units of the group's own spread
     * (Mahalanobis); that of a group's own colours is 3 on average.
     */
    public boolean foreign(double lightness, double a, double b, double beyond) {
        for (int g = 0; g < groups; g++) {
            if (atMean[g] < Double.POSITIVE_INFINITY && squared(g, lightness, a, b) <= beyond) {
                return false;
            }
        }
        return true;
    }

    private double squared(int g, double lightness, double valueA, double valueB) {
        double l = lightness - means[3 * g];
        double a = valueA - means[3 * g + 1];
        double b = valueB - means[3 * g + 2];
        int i = 6 * g;
        return inverse[i] * l * l
                + inverse[i + 3] * a * a
                + inverse[i + 5] * b * b
                + 2 * (inverse[i + 1] * l * a + inverse[i + 2] * l * b + inverse[i + 4] * a * b);
    }
}
