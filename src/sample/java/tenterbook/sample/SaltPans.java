package tenterbook.sample;

import static tenterbook.sample.Carver.disc;
import static tenterbook.sample.Carver.line;
import static tenterbook.sample.Carver.ribbon;
import static tenterbook.sample.Carver.widths;

import java.awt.Shape;
import java.awt.geom.Path2D;

/** B04: salt pans seen from the hill, with a cone of salt on each. Lime wood, 300 x 300 mm, 16 holes. */
final class SaltPans {
    private static final Noise WANDER = new Noise(404);

    private SaltPans() {}

    static Motif carve() {
        Carver c = new Carver();
        for (int row = 0; row < 4; row++) {
            for (int column = 0; column < 4; column++) {
                pan(c, column, row);
            }
        }
        for (int row = 1; row < 4; row++) {
            for (int column = 1; column < 4; column++) {
                double[] p = corner(column, row);
                c.cut(disc(p[0], p[1], 8.5));
                c.land(disc(p[0], p[1], 5));
                c.cut(disc(p[0], p[1], 2));
            }
        }
        return c.finish("B04", 300, 300);
    }

    /** Dyke crossings: on a grid at the edges, so that repeats meet; wandering inside. */
    private static double[] corner(double column, double row) {
        double inX = Math.sin(Math.PI * column / 4);
        double inY = Math.sin(Math.PI * row / 4);
        double dx = WANDER.at(column * 0.9 + 3.3, row * 0.9 + 1.2) * 30 * inX;
        double dy = WANDER.at(column * 0.9 + 8.1, row * 0.9 + 6.4) * 30 * inY;
        return new double[] {column * 75 + dx, row * 75 + dy};
    }

    private static void pan(Carver c, int column, int row) {
        double[] middle = corner(column + 0.5, row + 0.5);
        int kind = (column * 2 + row * 3 + column * row) % 3;
        c.land(tile(column, row, 4.6));
        if (kind == 0) {
            cone(c, middle, tileRings(c, column, row, 12, 17));
        } else if (kind == 1) {
            raked(c, column, row);
            cone(c, middle, 17);
        } else {
            tileRings(c, column, row, 10, 15, 20);
            cone(c, middle, 12.5);
        }
        sluice(c, column, row);
    }

    /** Cuts nested channels along the pan's walls; returns the radius left for the cone. */
    private static double tileRings(Carver c, int column, int row, double... insets) {
        for (double inset : insets) {
            c.cut(tile(column, row, inset));
            c.land(tile(column, row, inset + 2.3));
        }
        return 15;
    }

    private static void raked(Carver c, int column, int row) {
        for (int i = 1; i < 8; i++) {
            double t = i / 8.0;
            double[] a = corner(column + 0.16, row + t);
            double[] m = corner(column + 0.5, row + t + 0.03);
            double[] b = corner(column + 0.84, row + t);
            c.cut(ribbon(line(a[0], a[1], m[0], m[1], b[0], b[1]), widths(0.8, 3, 2.4, 0.8)));
        }
    }

    private static void cone(Carver c, double[] m, double r) {
        c.cut(disc(m[0], m[1], r + 2.6));
        c.land(disc(m[0], m[1], r));
        c.cell(disc(m[0], m[1], r * 0.56));
        c.land(disc(m[0], m[1], r * 0.24));
        int rays = 14;
        for (int i = 0; i < rays; i++) {
            double a = Math.PI * 2 * i / rays;
            double ca = Math.cos(a);
            double sa = Math.sin(a);
            c.cut(ribbon(
                    line(m[0] + ca * r * 0.72, m[1] + sa * r * 0.72, m[0] + ca * (r + 1), m[1] + sa * (r + 1)),
                    widths(0.9, 2.1)));
            if (i % 2 == 0) {
                c.land(ribbon(
                        line(m[0] + ca * r * 0.3, m[1] + sa * r * 0.3, m[0] + ca * r * 0.6, m[1] + sa * r * 0.6),
                        widths(1.8, 1.2)));
            }
        }
        c.hole(m[0] + r * 0.4 * Math.cos(Math.PI / 14), m[1] + r * 0.4 * Math.sin(Math.PI / 14), 2);
    }

    private static void sluice(Carver c, int column, int row) {
        boolean across = (column + row) % 2 == 0;
        double[] p = across ? corner(column + 1, row + 0.5) : corner(column + 0.5, row + 1);
        if (p[0] > 290 || p[1] > 290) {
            return;
        }
        c.at(p[0], p[1], across ? 0 : 90, 1, 1);
        c.cut(ribbon(line(-12, 0, 12, 0), widths(6, 7, 6)));
        c.land(ribbon(line(-6, -6, -6, 6), widths(2.4, 2.4)));
        c.land(ribbon(line(6, -6, 6, 6), widths(2.4, 2.4)));
        c.onBoard();
    }

    /** The pan's outline drawn in by inset mm, its corners rounded by use. */
    private static Shape tile(int column, int row, double inset) {
        double f = inset / 75;
        double[][] at = {{f, f}, {1 - f, f}, {1 - f, 1 - f}, {f, 1 - f}};
        double[][] p = new double[4][];
        for (int i = 0; i < 4; i++) {
            p[i] = corner(column + at[i][0], row + at[i][1]);
        }
        Path2D path = new Path2D.Double();
        for (int i = 0; i < 4; i++) {
            double[] a = between(p[i], p[(i + 3) % 4], 0.26);
            double[] b = between(p[i], p[(i + 1) % 4], 0.26);
            if (i == 0) {
                path.moveTo(a[0], a[1]);
            } else {
                path.lineTo(a[0], a[1]);
            }
            path.quadTo(p[i][0], p[i][1], b[0], b[1]);
        }
        path.closePath();
        return path;
    }

    private static double[] between(double[] a, double[] b, double t) {
        return line(a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t);
    }
}
