package tenterbook.sample;

import static tenterbook.sample.Carver.blob;
import static tenterbook.sample.Carver.disc;
import static tenterbook.sample.Carver.line;
import static tenterbook.sample.Carver.oval;
import static tenterbook.sample.Carver.ribbon;
import static tenterbook.sample.Carver.widths;

/**
 * B06: a drift net hung from its floats. Hornbeam, 280 x 220 mm, 12 holes: one in each float. State II has the mesh recut
 * bolder and three fish added.
 */
final class NetAndFloats {
    private static final int COLUMNS = 12;
    private static final int ROWS = 9;

    private NetAndFloats() {}

    static Motif carve(boolean recut) {
        Carver c = new Carver();
        mesh(c, recut);
        if (recut) {
            fish(c, 78, 128, 24, 1);
            fish(c, 196, 150, 160, 0.95);
            fish(c, 140, 184, -14, 0.8);
        }
        rope(c, 30, 0);
        rope(c, 204, 0.5);
        for (int i = 0; i < 6; i++) {
            bigFloat(c, 23.3 + i * 46.7, 30 + sag(i * 0.2), 17.5);
            bigFloat(c, 23.3 + i * 46.7, 200 - sag(i * 0.2) * 0.5, 10.5);
        }
        c.scatter(280, 220, 4.2, 61, k -> k.land(disc(0, 0, 1.7)));
        return c.finish(recut ? "B06-II" : "B06-I", 280, 220);
    }

    private static double sag(double t) {
        return 14 * Math.sin(Math.PI * t);
    }

    /** Knot of the net; square to the side edges so that repeats join. */
    private static double[] knot(double column, double row) {
        double t = column / COLUMNS;
        double y = 42
                + sag(t) * (1 - row / ROWS * 0.9)
                + row * 17.5
                + 3 * Math.sin(row * 0.9 + t * 6.3) * Math.sin(Math.PI * t);
        double x = t * 280 + 5 * Math.sin(row * 0.8) * Math.sin(2 * Math.PI * t);
        return new double[] {x, y};
    }

    private static void mesh(Carver c, boolean recut) {
        double w = recut ? 4.6 : 3.2;
        for (int row = 0; row < ROWS; row++) {
            for (int column = -1; column <= COLUMNS; column++) {
                double shift = row % 2 == 0 ? 0 : 0.5;
                double[] a = knot(column + shift, row);
                double[] left = knot(column + shift - 0.5, row + 1);
                double[] right = knot(column + shift + 0.5, row + 1);
                twine(c, a, left, w, -1);
                twine(c, a, right, w, 1);
            }
        }
        for (int row = 0; row <= ROWS; row++) {
            for (int column = -1; column <= COLUMNS; column++) {
                double[] a = knot(column + (row % 2 == 0 ? 0 : 0.5), row);
                c.land(oval(a[0], a[1], recut ? 4.6 : 3.6, recut ? 3.8 : 3));
            }
        }
    }

    private static void twine(Carver c, double[] a, double[] b, double w, int side) {
        double mx = (a[0] + b[0]) / 2 + side * 1.8;
        double my = (a[1] + b[1]) / 2 + 1.2;
        c.land(ribbon(line(a[0], a[1], mx, my, b[0], b[1]), widths(w * 1.15, w * 0.85, w * 1.15)));
    }

    private static void rope(Carver c, double y, double phase) {
        double[] course = new double[18];
        for (int i = 0; i < 9; i++) {
            double t = (i - 0.5) / 8.0;
            course[2 * i] = -20 + i * 40;
            course[2 * i + 1] =
                    y < 100 ? y + sag(Math.max(0, Math.min(1, t))) : y - sag(Math.max(0, Math.min(1, t))) * 0.5;
        }
        c.cut(ribbon(course, widths(17, 17)));
        c.land(ribbon(course, widths(11, 11)));
        for (int i = 0; i < 46; i++) {
            double[] p = Carver.on(course, (i + phase) / 46.0);
            c.cut(ribbon(line(p[0] - 3.4, p[1] + 6, p[0], p[1], p[0] + 3.4, p[1] - 6), widths(0.8, 2, 0.8)));
        }
    }

    private static void bigFloat(Carver c, double x, double y, double r) {
        c.cut(disc(x, y, r + 3.4));
        c.land(disc(x, y, r));
        if (r > 12) {
            c.cut(disc(x, y, r * 0.78));
            c.land(disc(x, y, r * 0.64));
        }
        c.cell(disc(x, y, r * 0.44));
        c.land(ribbon(
                line(x - r * 0.5, y - r * 0.1, x, y + r * 0.06, x + r * 0.5, y - r * 0.1), widths(1.4, 2.6, 1.4)));
        c.hole(x, y + r * 0.22, 2);
        for (int i = 0; i < 8 && r > 12; i++) {
            double a = Math.PI * 2 * (i + 0.5) / 8;
            c.land(ribbon(
                    line(
                            x + Math.cos(a) * r * 0.6,
                            y + Math.sin(a) * r * 0.6,
                            x + Math.cos(a) * r * 0.85,
                            y + Math.sin(a) * r * 0.85),
                    widths(2.6, 2.6)));
        }
    }

    private static void fish(Carver c, double x, double y, double turn, double size) {
        c.at(x, y, turn, size, size);
        c.cut(oval(-2, 0, 38, 15));
        c.land(ribbon(line(-28, 0, -10, -2, 10, -2, 30, 0), widths(4, 17, 19, 4)));
        c.land(blob(-25, 0, -38, -11, -34, 0, -38, 11));
        c.cut(ribbon(line(-22, 0, 2, -1.5, 14, -1), widths(0.8, 2.2, 0.8)));
        for (int i = 0; i < 4; i++) {
            double sx = 6 - i * 7;
            c.cut(ribbon(line(sx, -7 + i * 0.6, sx - 3, 0, sx, 5 - i * 0.5), widths(0.7, 1.5, 0.7)));
        }
        c.cut(disc(21, -2.2, 1.7));
        c.onBoard();
    }
}
