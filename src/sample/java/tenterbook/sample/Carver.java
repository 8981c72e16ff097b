package tenterbook.sample;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;

/** The carver's tools: tapered ribbons, discs and leaves, each left raised, cut away or walled in as a cell. */
final class Carver {
    private final List<Motif.Cut> cuts = new ArrayList<>();
    private final List<Motif.Hole> holes = new ArrayList<>();
    private AffineTransform place = new AffineTransform();

    /** What follows is drawn at (x, y), turned clockwise by degrees and scaled; a negative sx mirrors it. */
    void at(double x, double y, double degrees, double sx, double sy) {
        place = AffineTransform.getTranslateInstance(x, y);
        place.rotate(Math.toRadians(degrees));
        place.scale(sx, sy);
    }

    /** Back to plain board millimetres. */
    void onBoard() {
        place = new AffineTransform();
    }

    void land(Shape s) {
        add(Motif.Kind.LAND, s);
    }

    void cut(Shape s) {
        add(Motif.Kind.CHANNEL, s);
    }

    void cell(Shape s) {
        add(Motif.Kind.CELL, s);
    }

    private void add(Motif.Kind kind, Shape s) {
        cuts.add(new Motif.Cut(kind, place.createTransformedShape(s)));
    }

    void hole(double x, double y, double radiusMm) {
        Point2D p = place.transform(new Point2D.Double(x, y), null);
        holes.add(new Motif.Hole(p.getX(), p.getY(), radiusMm));
    }

    Motif finish(String boardState, double widthMm, double heightMm) {
        return new Motif(boardState, widthMm, heightMm, cuts, holes);
    }

    static Shape disc(double x, double y, double r) {
        return new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r);
    }

    static Shape oval(double x, double y, double rx, double ry) {
        return new Ellipse2D.Double(x - rx, y - ry, 2 * rx, 2 * ry);
    }

    static double[] line(double... xy) {
        return xy;
    }

    static double[] widths(double... w) {
        return w;
    }

    /** A smooth band through the points (x, y pairs); its full width in mm follows the given stations, ends rounded. */
    static Shape ribbon(double[] xy, double[] widths) {
        int steps = Math.max(24, xy.length * 8);
        double[] left = new double[2 * (steps + 1)];
        double[] right = new double[2 * (steps + 1)];
        for (int i = 0; i <= steps; i++) {
            double t = (double) i / steps;
            double[] p = on(xy, t);
            double[] q = on(xy, Math.min(1, t + 1e-3));
            double[] o = on(xy, Math.max(0, t - 1e-3));
            double dx = q[0] - o[0];
            double dy = q[1] - o[1];
            double n = Math.max(1e-9, Math.hypot(dx, dy));
            double w = widthAt(widths, t) / 2;
            left[2 * i] = p[0] + dy / n * w;
            left[2 * i + 1] = p[1] - dx / n * w;
            right[2 * i] = p[0] - dy / n * w;
            right[2 * i + 1] = p[1] + dx / n * w;
        }
        Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        path.moveTo(left[0], left[1]);
        for (int i = 1; i <= steps; i++) {
            path.lineTo(left[2 * i], left[2 * i + 1]);
        }
        for (int i = steps; i >= 0; i--) {
            path.lineTo(right[2 * i], right[2 * i + 1]);
        }
        path.closePath();
        double[] a = on(xy, 0);
        double[] b = on(xy, 1);
        path.append(disc(a[0], a[1], widths[0] / 2), false);
        path.append(disc(b[0], b[1], widths[widths.length - 1] / 2), false);
        return path;
    }

    /** A closed smooth outline through the points. */
    static Shape blob(double... xy) {
        int n = xy.length / 2;
        Path2D path = new Path2D.Double();
        for (int i = 0; i < n; i++) {
            double[] p0 = point(xy, (i + n - 1) % n);
            double[] p1 = point(xy, i);
            double[] p2 = point(xy, (i + 1) % n);
            double[] p3 = point(xy, (i + 2) % n);
            if (i == 0) {
                path.moveTo(p1[0], p1[1]);
            }
            path.curveTo(
                    p1[0] + (p2[0] - p0[0]) / 6,
                    p1[1] + (p2[1] - p0[1]) / 6,
                    p2[0] - (p3[0] - p1[0]) / 6,
                    p2[1] - (p3[1] - p1[1]) / 6,
                    p2[0],
                    p2[1]);
        }
        path.closePath();
        return path;
    }

    /** Point at t in [0, 1] on the smooth curve through the points (Catmull-Rom). */
    static double[] on(double[] xy, double t) {
        int n = xy.length / 2;
        double s = Math.min(t, 1 - 1e-9) * (n - 1);
        int i = (int) s;
        double u = s - i;
        double[] p0 = point(xy, Math.max(0, i - 1));
        double[] p1 = point(xy, i);
        double[] p2 = point(xy, Math.min(n - 1, i + 1));
        double[] p3 = point(xy, Math.min(n - 1, i + 2));
        double[] out = new double[2];
        for (int k = 0; k < 2; k++) {
            out[k] = 0.5
                    * (2 * p1[k]
                            + (p2[k] - p0[k]) * u
                            + (2 * p0[k] - 5 * p1[k] + 4 * p2[k] - p3[k]) * u * u
                            + (3 * p1[k] - p0[k] - 3 * p2[k] + p3[k]) * u * u * u);
        }
        return out;
    }

    private static double[] point(double[] xy, int i) {
        return new double[] {xy[2 * i], xy[2 * i + 1]};
    }

    private static double widthAt(double[] widths, double t) {
        double s = Math.min(t, 1 - 1e-9) * (widths.length - 1);
        int i = (int) s;
        double u = s - i;
        double smooth = u * u * (3 - 2 * u);
        return widths[i] + (widths[i + 1] - widths[i]) * smooth;
    }

    /** A pointed leaf from (0, 0) along +x, with a midrib and side veins cut into it. */
    void leaf(double length, double width, int veins) {
        double h = width / 2;
        land(blobLeaf(length, h));
        cut(ribbon(line(-2, 0, length * 0.5, h * 0.06, length * 0.93, 0), widths(2.6, 1.8, 0.7)));
        for (int i = 1; i <= veins; i++) {
            double x = length * (0.08 + 0.74 * i / (veins + 1.0));
            double reach = h * 0.78 * Math.sin(Math.PI * Math.min(1, (x + length * 0.16) / length));
            for (int side = -1; side <= 1; side += 2) {
                cut(ribbon(
                        line(x, 0, x + length * 0.07, side * reach * 0.6, x + length * 0.16, side * reach),
                        widths(1.7, 1.3, 0.4)));
            }
        }
    }

    private static Shape blobLeaf(double length, double h) {
        Path2D p = new Path2D.Double();
        p.moveTo(0, 0);
        p.curveTo(length * 0.22, -h * 1.35, length * 0.68, -h * 1.1, length, 0);
        p.curveTo(length * 0.68, h * 1.1, length * 0.22, h * 1.35, 0, 0);
        p.closePath();
        return p;
    }

    /** Fills the bare places of the board with small lands, no nearer than gap to anything raised so far. */
    void scatter(double widthMm, double heightMm, double gap, long seed, Small small) {
        Field far = finish("", widthMm, heightMm).ink(2).signedDistance();
        java.util.Random random = new java.util.Random(seed);
        List<double[]> placed = new ArrayList<>();
        for (int i = 0; i < 9000; i++) {
            double x = random.nextDouble() * widthMm;
            double y = random.nextDouble() * heightMm;
            double turn = random.nextDouble() * 360;
            boolean free = far.sample(x * 2, y * 2) > 2 * gap
                    && placed.stream().allMatch(p -> Math.hypot(p[0] - x, p[1] - y) > 2.1 * gap)
                    && Math.min(Math.min(x, widthMm - x), Math.min(y, heightMm - y)) > gap * 0.6;
            if (free) {
                placed.add(new double[] {x, y});
                at(x, y, turn, 1, 1);
                small.draw(this);
            }
        }
        onBoard();
    }

    interface Small {
        void draw(Carver carver);
    }
}
