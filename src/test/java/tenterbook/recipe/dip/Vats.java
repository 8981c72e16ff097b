package tenterbook.recipe.dip;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import tenterbook.colour.compare.ShadeReading;

/** Made-up points on a known curve. */
final class Vats {
    static final DipCurve REFERENCE = new DipCurve(0.35, 18, 0.22);
    static final int[] DIPS = {1, 2, 3, 4, 6, 8, 10, 12};
    static final Group SILK = new Group("silk", "woad");

    private Vats() {}

    static DipPoint point(DipCount dips, double ks) {
        return new DipPoint(dips, new ShadeReading(ks, "blue channel"), "piece " + dips.text(), SILK);
    }

    static DipPoint point(int dips, double ks) {
        return point(DipCount.exactly(dips), ks);
    }

    /** Points on the curve, scattered normally by {@code scatter} K/S; never below 0. */
    static List<DipPoint> points(DipCurve curve, int[] dips, double scatter, SplittableRandom random) {
        List<DipPoint> points = new ArrayList<>();
        for (int n : dips) {
            points.add(point(n, Math.max(0, curve.at(n) + scatter * random.nextGaussian())));
        }
        return points;
    }

    static FittedDips fitted(List<DipPoint> points) {
        var finding = DipFit.of(points);
        return finding.value().orElseThrow(() -> new AssertionError(finding.refusal()));
    }
}
