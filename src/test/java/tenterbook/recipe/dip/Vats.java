package tenterbook.recipe.dip;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Made-up points on a known curve of depth: 18 (1 − e^(−0.22 n)). */
final class Vats {
    static final DipCurve REFERENCE = new DipCurve(0.22, 1);
    static final int[] DIPS = {1, 2, 3, 4, 6, 8, 10, 12};
    private static final double LEVEL = 18;

    private Vats() {}

    static double depth(double dips) {
        return LEVEL * Math.exp(REFERENCE.at(dips));
    }

    static DipPoint point(DipCount dips, double ks) {
        return new DipPoint(dips, ks, "piece " + dips.text());
    }

    static DipPoint point(int dips, double ks) {
        return point(DipCount.exactly(dips), ks);
    }

    /** Points whose ln K/S is scattered normally about the curve. */
    static List<DipPoint> points(int[] dips, double spread, SplittableRandom random) {
        List<DipPoint> points = new ArrayList<>();
        for (int n : dips) {
            points.add(point(n, depth(n) * Math.exp(spread * random.nextGaussian())));
        }
        return points;
    }

    static FittedDips fitted(List<DipPoint> points) {
        var finding = DipFit.of(points);
        return finding.value().orElseThrow(() -> new AssertionError(finding.refusal()));
    }
}
