package tenterbook.imaging.cloth;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** The edge of an area of cells; lengths in sides of a cell. */
record EdgePolygon(List<Point> points) {
    /** A point between cells, from the upper left corner of the grid. */
    record Point(int x, int y) {
        double from(Point other) {
            return Math.hypot(x - other.x, y - other.y);
        }
    }

    /** The smallest polygon without bays around it. */
    EdgePolygon hull() {
        List<Point> sorted = new ArrayList<>(points);
        sorted.sort((p, q) -> p.x != q.x ? Integer.compare(p.x, q.x) : Integer.compare(p.y, q.y));
        List<Point> hull = new ArrayList<>();
        for (int half = 0; half < 2; half++) {
            int base = hull.size();
            for (Point p : sorted) {
                while (hull.size() > base + 1 && turn(hull.get(hull.size() - 2), hull.get(hull.size() - 1), p) <= 0) {
                    hull.remove(hull.size() - 1);
                }
                hull.add(p);
            }
            hull.remove(hull.size() - 1);
            Collections.reverse(sorted);
        }
        return new EdgePolygon(hull);
    }

    private static long turn(Point o, Point a, Point b) {
        return (long) (a.x - o.x) * (b.y - o.y) - (long) (a.y - o.y) * (b.x - o.x);
    }

    double area() {
        long twice = 0;
        for (int i = 0; i < points.size(); i++) {
            Point p = points.get(i);
            Point q = points.get((i + 1) % points.size());
            twice += (long) p.x * q.y - (long) q.x * p.y;
        }
        return Math.abs(twice) / 2.0;
    }

    double length() {
        double length = 0;
        for (int i = 0; i < points.size(); i++) {
            length += points.get(i).from(points.get((i + 1) % points.size()));
        }
        return length;
    }

    /** The same polygon with fewer corners: none that is left out lies further off than so much (Douglas and Peucker 1973). */
    EdgePolygon simplified(double most) {
        if (points.size() < 4) {
            return this;
        }
        int far = 0;
        for (int i = 1; i < points.size(); i++) {
            far = points.get(i).from(points.get(0)) > points.get(far).from(points.get(0)) ? i : far;
        }
        List<Point> out = new ArrayList<>();
        keep(points.subList(0, far + 1), most, out);
        List<Point> back = new ArrayList<>(points.subList(far, points.size()));
        back.add(points.get(0));
        keep(back, most, out);
        return new EdgePolygon(out);
    }

    /** Adds all but the last. */
    private static void keep(List<Point> line, double most, List<Point> out) {
        Point a = line.get(0);
        Point b = line.get(line.size() - 1);
        double length = Math.max(1e-9, b.from(a));
        int far = 0;
        double least = most;
        for (int i = 1; i < line.size() - 1; i++) {
            Point p = line.get(i);
            double off = a.equals(b) ? p.from(a) : Math.abs(turn(a, b, p)) / length;
            if (off > least) {
                least = off;
                far = i;
            }
        }
        if (far == 0) {
            out.add(a);
        } else {
            keep(line.subList(0, far + 1), most, out);
            keep(line.subList(far, line.size()), most, out);
        }
    }
}
