package tenterbook.recipe.dip;

import java.util.Arrays;
import java.util.List;

/**
 * Points prepared for least squares. A point whose count is a range is compared with the curve's mean over that range, with
 * weight σ² / (σ² + v), where v is the variance due to the range and σ² the scatter of the others.
 */
final class Sample {
    /** Least scatter, as a part of the deepest shade, so that a range keeps some weight. */
    private static final double LEAST_SCATTER = 1e-3;

    final List<DipPoint> points;
    final double[] weights;

    private Sample(List<DipPoint> points, double[] weights) {
        this.points = points;
        this.weights = weights;
    }

    static Sample of(List<DipPoint> points) {
        double[] even = new double[points.size()];
        Arrays.fill(even, 1);
        return new Sample(List.copyOf(points), even);
    }

    int size() {
        return points.size();
    }

    DipCount dips(int i) {
        return points.get(i).dips();
    }

    double ks(int i) {
        return points.get(i).ks();
    }

    Sample weighed(DipCurve curve, double variance) {
        double least = LEAST_SCATTER * deepest();
        double scatter = Math.max(variance, least * least);
        double[] weighed = new double[size()];
        for (int i = 0; i < size(); i++) {
            weighed[i] = scatter / (scatter + curve.vagueness(dips(i)));
        }
        return new Sample(points, weighed);
    }

    Sample without(int left) {
        double[] rest = new double[size() - 1];
        System.arraycopy(weights, 0, rest, 0, left);
        System.arraycopy(weights, left + 1, rest, left, rest.length - left);
        return new Sample(
                java.util.stream.IntStream.range(0, size())
                        .filter(i -> i != left)
                        .mapToObj(points::get)
                        .toList(),
                rest);
    }

    /** Weighted sum of squares about the curve. */
    double squares(DipCurve curve) {
        double sum = 0;
        for (int i = 0; i < size(); i++) {
            double miss = ks(i) - curve.mean(dips(i));
            sum += weights[i] * miss * miss;
        }
        return sum;
    }

    boolean anyRange() {
        return points.stream().anyMatch(point -> point.dips().choices() > 1);
    }

    double deepest() {
        return points.stream().mapToDouble(DipPoint::ks).max().orElse(0);
    }

    double mostDips() {
        return points.stream().mapToDouble(p -> p.dips().high()).max().orElse(0);
    }

    /** The fewest dips above 0; 1 where there are none. */
    double fewestDips() {
        return points.stream()
                .mapToDouble(p -> p.dips().middle())
                .filter(n -> n > 0)
                .min()
                .orElse(1);
    }
}
