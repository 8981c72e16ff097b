package tenterbook.sample;

import static tenterbook.sample.Carver.blob;
import static tenterbook.sample.Carver.disc;
import static tenterbook.sample.Carver.line;
import static tenterbook.sample.Carver.oval;
import static tenterbook.sample.Carver.ribbon;
import static tenterbook.sample.Carver.widths;

import java.util.Random;

/** B05: an almond bough in flower over dry-stone terraces. Walnut, lacquered, 480 x 380 mm, 30 holes. */
final class AlmondTerrace {
    private static final double[][] FLOWERS = {
        {92, 148, 1.05}, {168, 86, 1.15}, {262, 128, 1.2}, {340, 62, 1.1}, {410, 130, 1.0}, {240, 30, 0.85},
        {60, 56, 0.95}, {138, 196, 0.8}, {330, 178, 0.85}, {0, 214, 1.1}, {480, 40, 1.1}, {420, 208, 0.75}
    };
    private static final double[][] NUTS = {
        {120, 40, 30},
        {206, 176, 120},
        {296, 92, -30},
        {388, 88, 70},
        {214, 94, 60},
        {52, 108, -20},
        {304, 30, 10},
        {378, 176, 110},
        {452, 96, -40}
    };

    private AlmondTerrace() {}

    static Motif carve() {
        Carver c = new Carver();
        terraces(c);
        leaves(c);
        bough(c);
        for (double[] n : NUTS) {
            nut(c, n[0], n[1], n[2]);
        }
        for (int i = 0; i < FLOWERS.length; i++) {
            flower(c, FLOWERS[i][0], FLOWERS[i][1], i * 29, FLOWERS[i][2]);
        }
        c.scatter(480, 225, 6.2, 51, k -> k.land(blob(-3, 0, 0, -2, 3, 0, 0, 2)));
        return c.finish("B05", 480, 380);
    }

    private static void bough(Carver c) {
        c.land(ribbon(
                line(-14, 300, 30, 262, 84, 226, 150, 142, 232, 112, 320, 118, 400, 70, 494, 72),
                widths(28, 24, 18, 14, 12, 9, 8)));
        c.land(ribbon(line(84, 226, 66, 160, 60, 100, 74, 20, 70, -12), widths(14, 10, 7, 6)));
        c.land(ribbon(line(150, 142, 160, 100, 210, 60, 240, 20, 240, -12), widths(11, 8, 6, 5)));
        c.land(ribbon(line(232, 112, 290, 80, 336, 40, 350, -12), widths(9, 7, 6, 5)));
        c.land(ribbon(line(300, 117, 350, 160, 410, 176, 494, 170), widths(9, 7, 6, 6)));
        c.land(ribbon(line(170, 132, 200, 172, 222, 206), widths(7, 5, 3)));
        c.cut(ribbon(line(-14, 306, 30, 268, 84, 232, 150, 146, 232, 115, 320, 121, 400, 73), widths(2.4, 3, 2.2, 1)));
        c.cut(ribbon(line(-14, 296, 34, 254, 84, 218, 140, 148), widths(2, 2.4, 0.6)));
        c.cut(ribbon(line(78, 206, 64, 160, 59, 110), widths(1, 2.4, 0.6)));
    }

    private static void leaves(Carver c) {
        double[][] leaves = {
            {66, 160, 200, 42}, {110, 196, 24, 46}, {196, 122, -100, 38}, {282, 116, 62, 44}, {372, 88, 36, 44},
            {62, 92, -8, 36}, {210, 60, -172, 36}, {304, 68, -140, 36}, {446, 70, -112, 40}, {400, 174, 60, 38},
            {38, 254, -118, 44}, {450, 171, -60, 40}, {182, 150, 160, 32}
        };
        for (double[] l : leaves) {
            c.at(l[0], l[1], l[2], 1, 1);
            c.leaf(l[3] * 1.1, 17, 4);
        }
        c.onBoard();
    }

    private static void flower(Carver c, double x, double y, double turn, double size) {
        for (int i = 0; i < 5; i++) {
            c.at(x, y, turn + i * 72, size, size);
            c.cut(ribbon(line(2, 0, 18, 0, 33.5, 0), widths(12, 33, 19)));
        }
        for (int i = 0; i < 5; i++) {
            c.at(x, y, turn + i * 72, size, size);
            c.land(blob(5, 0, 12, -9, 24, -14.5, 33, -8, 30.5, 0, 33, 8, 24, 14.5, 12, 9));
            for (int k = -1; k <= 1; k++) {
                c.cut(ribbon(line(11, k * 2.2, 19, k * 4.4, 27, k * 6.6), widths(2, 1.6, 0.5)));
            }
        }
        c.at(x, y, turn, size, size);
        c.land(disc(0, 0, 10.5));
        c.cell(disc(0, 0, 7.4));
        for (int i = 0; i < 8; i++) {
            double a = Math.PI * 2 * i / 8;
            c.land(disc(Math.cos(a) * 4.9, Math.sin(a) * 4.9, 1.15));
        }
        c.hole(0, 0, 2.5);
        c.onBoard();
    }

    private static void nut(Carver c, double x, double y, double turn) {
        c.at(x, y, turn, 1, 1);
        c.cut(oval(0, 0, 26, 16));
        c.land(blob(-23, 0, -13, -11, 2, -14, 15, -8.5, 24, 0, 15, 8.5, 2, 14, -13, 11));
        c.cell(blob(-14, 0, -8, -5.6, 2, -7.4, 10, -4, 15, 0, 10, 4, 2, 7.4, -8, 5.6));
        c.land(ribbon(line(-11, 0, 11, 0), widths(0.8, 2.4, 0.8)));
        c.hole(0, -4, 2);
        c.hole(0, 4, 2);
        c.onBoard();
    }

    /** Three walls in rising curves, their stones raised; the joints take the dye. */
    private static void terraces(Carver c) {
        Random random = new Random(55);
        for (int wall = 0; wall < 4; wall++) {
            double[] course = line(
                    -10,
                    250 + wall * 36,
                    120,
                    262 + wall * 34,
                    250,
                    240 + wall * 38,
                    370,
                    258 + wall * 36,
                    490,
                    246 + wall * 37);
            for (int bed = 0; bed < (wall == 3 ? 1 : 2); bed++) {
                double t = bed * 0.012;
                while (t < 0.995) {
                    double span = (15 + random.nextDouble() * 15) / 500;
                    double[] a = Carver.on(course, t);
                    double[] b = Carver.on(course, Math.min(1, t + span));
                    double y = bed * 13;
                    double h = 9.5 + random.nextDouble() * 1.5;
                    c.land(blob(
                            a[0] + 1.2,
                            a[1] + y + 2,
                            a[0] + 3,
                            a[1] + y,
                            b[0] - 3.5,
                            b[1] + y + random.nextDouble(),
                            b[0] - 1.4,
                            b[1] + y + 2.5,
                            b[0] - 1.6,
                            b[1] + y + h - 2,
                            b[0] - 4,
                            b[1] + y + h,
                            a[0] + 3.5,
                            a[1] + y + h,
                            a[0] + 1.2,
                            a[1] + y + h - 2.5));
                    t += span;
                }
            }
        }
        for (int i = 0; i < 26; i++) {
            double t = (i + 0.5) / 26;
            for (int wall = 0; wall < 3; wall++) {
                double[] course = line(
                        -10,
                        277 + wall * 36,
                        120,
                        289 + wall * 34,
                        250,
                        267 + wall * 38,
                        370,
                        285 + wall * 36,
                        490,
                        273 + wall * 37);
                double[] p = Carver.on(course, t);
                double lean = Math.sin(i * 1.7 + wall) * 3;
                c.land(ribbon(line(p[0], p[1] + 7, p[0] + lean, p[1] - 1), widths(3.2, 0.8)));
            }
        }
    }
}
