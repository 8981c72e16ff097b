package tenterbook.sample;

import static tenterbook.sample.Carver.blob;
import static tenterbook.sample.Carver.disc;
import static tenterbook.sample.Carver.line;
import static tenterbook.sample.Carver.oval;
import static tenterbook.sample.Carver.ribbon;
import static tenterbook.sample.Carver.widths;

/** B01: a fig bough with split fruit, and the wasp that comes to it. Pear wood, 340 x 300 mm, 18 holes. */
final class FigAndWasp {
    private static final double[] LOBE_TURN = {-98, 98, -50, 50, 0};
    private static final double[] LOBE_LENGTH = {58, 58, 92, 92, 112};

    private FigAndWasp() {}

    static Motif carve() {
        Carver c = new Carver();
        c.land(ribbon(
                line(-12, 262, 60, 236, 118, 190, 176, 150, 236, 96, 300, 62, 352, 52), widths(17, 13, 12, 10, 9, 8)));
        c.land(ribbon(line(118, 190, 104, 150, 102, 118), widths(9, 6, 5)));
        c.land(ribbon(line(176, 150, 222, 166, 258, 176), widths(8, 6, 5)));
        c.land(ribbon(line(236, 96, 226, 70, 224, 44), widths(7, 5, 4)));
        c.cut(ribbon(line(-12, 266, 60, 239, 118, 193, 176, 153, 236, 99, 300, 65), widths(2.2, 1.8, 1.2, 0.6)));
        leaf(c, 102, 122, -104, 1.0);
        leaf(c, 250, 176, 14, 0.92);
        leaf(c, 44, 236, 62, 0.62);
        leaf(c, 226, 50, -122, 0.5);
        leaf(c, 340, 58, -90, 0.62);
        splitFig(c, 170, 166, -8, 1.0);
        splitFig(c, 0, 104, 0, 0.92);
        wholeFig(c, 126, 206, 10, 0.72);
        wholeFig(c, 300, 68, -8, 0.8);
        wholeFig(c, 216, 102, 16, 0.52);
        wasp(c, 286, 262, -28);
        wasp(c, 170, 26, 152);
        c.scatter(340, 300, 5.4, 11, k -> k.land(ribbon(line(-2.6, 0, 2.6, 0), widths(1.2, 4.2, 1.2))));
        return c.finish("B01", 340, 300);
    }

    private static void leaf(Carver c, double x, double y, double turn, double size) {
        for (int i = 0; i < 5; i++) {
            c.at(x, y, turn + LOBE_TURN[i], size, size);
            double n = LOBE_LENGTH[i];
            c.land(ribbon(line(-4, 0, n * 0.35, 0, n * 0.7, 0, n, 0), widths(14, 21, 35, 33, 5)));
        }
        for (int i = 0; i < 5; i++) {
            c.at(x, y, turn + LOBE_TURN[i], size, size);
            double n = LOBE_LENGTH[i];
            c.cut(ribbon(line(2, 0, n * 0.5, 0, n * 0.92, 0), widths(3.6, 2.6, 0.9)));
            for (int k = 0; k < 4; k++) {
                double at = n * (0.36 + 0.14 * k);
                double reach = k == 3 ? 8 : k == 0 ? 8.5 : 12.5;
                for (int side = -1; side <= 1; side += 2) {
                    c.cut(ribbon(
                            line(at, 0, at + 6, side * reach * 0.55, at + 15, side * reach), widths(2.2, 1.7, 0.6)));
                }
            }
        }
    }

    /** Outline of a fig hanging from (0, 0), about 86 mm long. */
    private static java.awt.Shape fruit(double inset) {
        double w = 32 - inset;
        return blob(
                -3,
                2 + inset,
                -9,
                20 + inset * 0.5,
                -w * 0.86,
                44,
                -w,
                62,
                -w * 0.62,
                84 - inset * 0.7,
                0,
                91 - inset,
                w * 0.62,
                84 - inset * 0.7,
                w,
                62,
                w * 0.86,
                44,
                9,
                20 + inset * 0.5,
                3,
                2 + inset);
    }

    private static void splitFig(Carver c, double x, double y, double turn, double size) {
        c.at(x, y, turn, size, size);
        c.cut(ribbon(line(0, 2, 0, 40, 0, 62), widths(12, 62, 74)));
        c.land(ribbon(line(0, -8, 0, 6), widths(6, 9)));
        c.land(fruit(0));
        c.cell(blob(0, 20, -12, 38, -22, 60, -13, 79, 0, 83, 13, 79, 22, 60, 12, 38));
        for (int ring = 0; ring < 2; ring++) {
            int n = ring == 0 ? 9 : 15;
            for (int i = 0; i < n; i++) {
                double a = Math.PI * 2 * (i + 0.5 * ring) / n;
                double rx = ring == 0 ? 7.5 : 14.2;
                double ry = ring == 0 ? 11 : 20;
                double sx = Math.sin(a) * rx;
                double sy = 59 - Math.cos(a) * ry;
                double lean = sy < 50 ? 0.72 : 1;
                c.land(ribbon(line(sx * lean, sy, sx * lean * 1.3, 59 + (sy - 59) * 1.22), widths(1.2, 3.4)));
            }
        }
        c.hole(0, 60, 3);
        c.hole(0, 42, 2.5);
        c.hole(0, 74, 2.5);
    }

    private static void wholeFig(Carver c, double x, double y, double turn, double size) {
        c.at(x, y, turn, size, size);
        c.cut(ribbon(line(0, 2, 0, 40, 0, 62), widths(12, 60, 74)));
        c.land(ribbon(line(0, -8, 0, 6), widths(6, 9)));
        c.land(fruit(0));
        for (int side = -1; side <= 1; side += 2) {
            c.cut(ribbon(line(side * 3, 20, side * 11, 46, side * 12, 64, side * 6, 80), widths(0.8, 3, 3, 0.8)));
            c.cut(ribbon(line(side * 7, 26, side * 21, 50, side * 23, 64, side * 15, 78), widths(0.8, 2.6, 2.4, 0.7)));
        }
        c.cell(oval(0, 64, 4.6, 9));
        c.hole(0, 60, 2);
        c.hole(0, 68, 2);
    }

    private static void wasp(Carver c, double x, double y, double turn) {
        c.at(x, y, turn, 1, 1);
        for (int side = -1; side <= 1; side += 2) {
            c.land(ribbon(line(-4, side * 3, -18, side * 24, -34, side * 42), widths(5, 17, 15, 6)));
            c.land(ribbon(line(2, side * 3, 8, side * 26, 2, side * 50), widths(5, 17, 17, 6)));
            c.cut(ribbon(line(2, side * 9, 7, side * 26, 3, side * 45), widths(1.6, 1.8, 0.6)));
            c.cut(ribbon(line(4, side * 18, 12, side * 32), widths(1.6, 0.6)));
            c.cut(ribbon(line(-6, side * 9, -18, side * 25, -30, side * 38), widths(1.6, 1.8, 0.6)));
            c.land(ribbon(line(20, side * 2, 32, side * 9, 40, side * 6), widths(2.4, 1.8, 1.4)));
        }
        c.cut(oval(1, 0, 15, 10));
        c.land(oval(1, 0, 12, 8));
        c.land(oval(-30, 0, 21, 9));
        c.land(ribbon(line(-50, 0, -62, 0), widths(5, 1)));
        c.land(disc(18, 0, 7.5));
        for (int i = 0; i < 4; i++) {
            double sx = -18 - i * 8;
            c.cut(ribbon(line(sx, -10, sx - 3, 0, sx, 10), widths(2.4, 2.8, 2.4)));
        }
        c.cell(oval(1, 0, 6, 4));
        c.hole(1, 0, 2);
        c.cell(oval(-29.5, 0, 2.6, 3.6));
        c.hole(-29.5, 0, 2);
        c.cell(disc(18, 0, 3.2));
        c.hole(18, 0, 1.5);
    }
}
