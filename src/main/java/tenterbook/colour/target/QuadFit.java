package tenterbook.colour.target;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The quadrilateral around a set of points: their convex hull, reduced to four sides. */
final class QuadFit {
    private QuadFit() {}

    /** @return four corners, clockwise on the screen; empty if the points lie in a line */
    static Optional<double[][]> around(List<double[]> points) {
        List<double[]> hull = hull(points);
        while (hull.size() > 4) {
            if (!dropSide(hull)) {
                return Optional.empty();
            }
        }
        return hull.size() == 4 ? Optional.of(hull.toArray(double[][]::new)) : Optional.empty();
    }

    /** The area of a polygon by the shoelace formula. */
    static double area(double[][] polygon) {
        double twice = 0;
        for (int i = 0; i < polygon.length; i++) {
            double[] p = polygon[i];
            double[] q = polygon[(i + 1) % polygon.length];
            twice += p[0] * q[1] - q[0] * p[1];
        }
        return Math.abs(twice) / 2;
    }

    /** The intersection of the lines through a, b and through c, d; null if they are parallel. */
    static double[] meeting(double[] a, double[] b, double[] c, double[] d) {
        double ux = b[0] - a[0];
        double uy = b[1] - a[1];
        double vx = d[0] - c[0];
        double vy = d[1] - c[1];
        double cross = ux * vy - uy * vx;
        if (Math.abs(cross) < 1e-9 * (Math.hypot(ux, uy) * Math.hypot(vx, vy) + 1e-12)) {
            return null;
        }
        double t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / cross;
        return new double[] {a[0] + t * ux, a[1] + t * uy};
    }

    /** Removes the side whose removal adds least area, extending its neighbours until they meet. */
    private static boolean dropSide(List<double[]> hull) {
        int n = hull.size();
        int best = -1;
        double least = Double.MAX_VALUE;
        double[] corner = null;
        for (int i = 0; i < n; i++) {
            double[] before = hull.get((i + n - 1) % n);
            double[] from = hull.get(i);
            double[] to = hull.get((i + 1) % n);
            double[] after = hull.get((i + 2) % n);
            double[] meet = meeting(before, from, to, after);
            if (meet == null
                    || (meet[0] - from[0]) * (from[0] - before[0]) + (meet[1] - from[1]) * (from[1] - before[1]) < 0) {
                continue;
            }
            double added = area(new double[][] {from, meet, to});
            if (added < least) {
                least = added;
                best = i;
                corner = meet;
            }
        }
        if (best < 0) {
            return false;
        }
        hull.set(best, corner);
        hull.remove((best + 1) % n);
        return true;
    }

    /** Andrew's monotone chain, 1979. */
    private static List<double[]> hull(List<double[]> points) {
        double[][] sorted = points.toArray(double[][]::new);
        Arrays.sort(sorted, Comparator.<double[]>comparingDouble(p -> p[0]).thenComparingDouble(p -> p[1]));
        List<double[]> hull = new ArrayList<>();
        for (int pass = 0; pass < 2; pass++) {
            int start = hull.size();
            for (int i = 0; i < sorted.length; i++) {
                double[] p = sorted[pass == 0 ? i : sorted.length - 1 - i];
                while (hull.size() >= start + 2 && turn(hull.get(hull.size() - 2), hull.get(hull.size() - 1), p) <= 0) {
                    hull.remove(hull.size() - 1);
                }
                hull.add(p);
            }
            hull.remove(hull.size() - 1);
        }
        return hull;
    }

    private static double turn(double[] a, double[] b, double[] c) {
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    }
}
