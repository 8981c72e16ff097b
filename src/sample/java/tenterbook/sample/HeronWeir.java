package tenterbook.sample;

import static tenterbook.sample.Carver.blob;
import static tenterbook.sample.Carver.disc;
import static tenterbook.sample.Carver.line;
import static tenterbook.sample.Carver.oval;
import static tenterbook.sample.Carver.ribbon;
import static tenterbook.sample.Carver.widths;

/**
 * B02: a heron fishing at a wattle weir. Sycamore, 420 x 340 mm, 24 holes. In state I the beak is thin and runs against
 * the withies; state II gives it a stouter beak with a clear channel around, and thicker stakes.
 */
final class HeronWeir {
    private HeronWeir() {}

    static Motif carve(boolean recut) {
        Carver c = new Carver();
        sun(c);
        reeds(c);
        weir(c, recut);
        water(c);
        heron(c, recut);
        fish(c, 300, 285, 8, 1);
        fish(c, 205, 318, -6, 0.8);
        fish(c, 368, 316, 176, 0.85);
        fish(c, 52, 306, 2, 0.9);
        c.scatter(420, 340, 6.5, 21, k -> k.land(ribbon(line(-5, 0.8, 0, -0.8, 5, 0.8), widths(0.8, 3, 0.8))));
        return c.finish(recut ? "B02-II" : "B02-I", 420, 340);
    }

    private static void sun(Carver c) {
        c.land(disc(420, 0, 78));
        c.cut(disc(420, 0, 66));
        c.land(disc(420, 0, 58));
        for (int i = 0; i < 13; i++) {
            double a = Math.toRadians(93 + i * 7);
            double cx = 420 + Math.cos(a) * 72;
            double cy = Math.sin(a) * 72;
            if (i % 2 == 0) {
                c.cell(disc(cx, cy, 2.4));
            }
            c.land(ribbon(
                    line(420 + Math.cos(a) * 86, Math.sin(a) * 86, 420 + Math.cos(a) * 112, Math.sin(a) * 112),
                    widths(1.2, 5.5, 1.2)));
        }
        c.cell(disc(420, 0, 32));
        c.land(disc(420, 0, 17));
        c.hole(399, 15.3, 2.5);
        c.cut(arc(420, 0, 41));
        c.cut(arc(420, 0, 49));
        for (int i = 0; i < 5; i++) {
            double a = Math.toRadians(99 + i * 18);
            c.land(ribbon(
                    line(420 + Math.cos(a) * 15, Math.sin(a) * 15, 420 + Math.cos(a) * 27, Math.sin(a) * 27),
                    widths(7, 1)));
        }
    }

    private static java.awt.Shape arc(double x, double y, double r) {
        double[] xy = new double[14];
        for (int i = 0; i < 7; i++) {
            double a = Math.toRadians(98 + i * 12.5);
            xy[2 * i] = x + Math.cos(a) * r;
            xy[2 * i + 1] = y + Math.sin(a) * r;
        }
        return ribbon(xy, widths(0.8, 2.6, 0.8));
    }

    private static void reeds(Carver c) {
        double[][] reeds = {{6, 30, 10}, {24, 78, -8}, {-2, 96, 22}, {40, 128, 18}, {404, 132, -12}, {422, 116, -20}};
        for (double[] r : reeds) {
            double lean = r[2];
            c.land(ribbon(line(r[0], 262, r[0] + lean * 0.2, 180, r[0] + lean, r[1]), widths(6, 4.5, 3)));
            c.at(r[0] + lean, r[1] + 6, -90 + lean * 0.3, 1, 1);
            c.land(ribbon(line(-20, 0, 22, 0), widths(7, 13, 12, 5)));
            c.land(ribbon(line(22, 0, 36, 0), widths(3, 1)));
            c.cut(ribbon(line(-14, 0, 16, 0), widths(1, 2.6, 1)));
            c.onBoard();
            c.land(ribbon(line(r[0], 250, r[0] + 16 + lean, 210, r[0] + 24 + lean * 2, 150), widths(3, 8, 6, 1)));
        }
    }

    private static void weir(Carver c, boolean recut) {
        double thick = recut ? 12.5 : 10;
        for (int row = 0; row < 4; row++) {
            double y = 190 + row * 18;
            double[] xy = new double[22];
            for (int i = 0; i < 11; i++) {
                xy[2 * i] = 216 + i * 21.4;
                xy[2 * i + 1] = y + ((i + row) % 2 == 0 ? 5 : -5);
            }
            c.land(ribbon(xy, widths(recut ? 9.5 : 8.5, recut ? 9.5 : 8.5)));
            c.cut(ribbon(xy, widths(1.6, 1.9, 1.4, 1.8)));
        }
        for (int i = 0; i < 6; i++) {
            double x = 236 + i * 36;
            double top = 158 + 9 * Math.sin(i * 2.4);
            c.cut(ribbon(line(x, top - 4, x, 262), widths(thick + 5, thick + 5)));
            c.land(ribbon(line(x, top, x + 1, 262), widths(thick, thick)));
            c.cut(ribbon(line(x - 2, top + 6, x - 1, 200, x - 2, 258), widths(0.8, 1.8, 0.8)));
            c.cell(disc(x, top + 5, recut ? 3.4 : 2.8));
            c.hole(x, top + 5, 2);
        }
    }

    private static void water(Carver c) {
        for (int row = 0; row < 4; row++) {
            double y = 270 + row * 20;
            for (int i = -1; i < 5; i++) {
                double x = i * 105 + (row % 2) * 52;
                c.land(ribbon(
                        line(x, y + 4, x + 22, y - 5, x + 50, y + 3, x + 72, y - 4, x + 92, y + 3),
                        widths(1, 6.5, 5, 6.5, 1)));
            }
        }
    }

    private static void fish(Carver c, double x, double y, double turn, double size) {
        c.at(x, y, turn, size, size);
        c.cut(oval(-2, 0, 44, 17));
        c.land(ribbon(line(-34, 0, -14, -3, 10, -2, 32, 0), widths(5, 20, 22, 5)));
        c.land(blob(-30, 0, -46, -13, -42, 0, -46, 13));
        c.cell(oval(4, -1.5, 11, 4.6));
        c.hole(0, -1.5, 2);
        c.hole(8, -1.5, 2);
        c.cut(ribbon(line(19, -9, 15, -2, 19, 6), widths(1, 2.2, 1)));
        c.cut(disc(24, -2.5, 1.7));
        c.cut(ribbon(line(-22, -3, -10, -4, -10, 2), widths(1.6, 1.2, 0.8)));
    }

    private static void heron(Carver c, boolean recut) {
        c.at(-14, 0, 0, 1, 1);
        double[] body = line(64, 240, 92, 200, 134, 164, 168, 152);
        c.cut(ribbon(body, widths(20, 66, 84, 46)));
        double[] neck = line(160, 168, 186, 140, 176, 112, 148, 92, 146, 64, 172, 44, 196, 46);
        c.cut(ribbon(neck, widths(54, 32, 24, 22, 22, 26)));
        for (int leg = 0; leg < 2; leg++) {
            double x = 128 + leg * 26;
            c.cut(ribbon(line(x, 190, x + 6, 236, x - 2 + leg * 6, 300), widths(13, 12, 12)));
            c.land(ribbon(line(x, 186, x + 6, 236, x - 2 + leg * 6, 300), widths(9, 5.5, 5, 5)));
            double fx = x - 2 + leg * 6;
            c.land(ribbon(line(fx, 298, fx + 22, 304), widths(5, 2)));
            c.land(ribbon(line(fx, 298, fx + 12, 312), widths(5, 2)));
            c.land(ribbon(line(fx, 298, fx - 14, 304), widths(5, 2)));
        }
        c.land(ribbon(body, widths(6, 50, 70, 34)));
        c.land(ribbon(neck, widths(44, 22, 15, 13, 14, 17)));
        plumage(c);
        head(c, recut);
        c.onBoard();
    }

    private static void plumage(Carver c) {
        c.cut(ribbon(line(158, 146, 118, 168, 88, 204, 66, 236), widths(1, 3.4, 3, 1)));
        for (int i = 0; i < 6; i++) {
            double x = 150 - i * 13;
            double y = 156 + i * 11.5;
            c.cut(ribbon(line(x, y, x - 10, y + 18, x - 30, y + 36 - i), widths(0.8, 3, 0.8)));
        }
        for (int i = 0; i < 4; i++) {
            double x = 138 - i * 15;
            double y = 180 + i * 13;
            c.cell(oval(x - 6, y - 16, 2.5, 2.5));
        }
        c.cell(oval(134, 164, 4, 4));
        c.hole(134, 164, 2);
        for (int i = 0; i < 3; i++) {
            c.land(ribbon(line(176 - i * 5, 168, 174 - i * 8, 190, 180 - i * 10, 208), widths(4.5, 3.5, 0.8)));
        }
        c.cut(ribbon(line(178, 150, 181, 130, 168, 112, 150, 98), widths(0.8, 2.4, 2, 0.8)));
    }

    private static void head(Carver c, boolean recut) {
        if (recut) {
            c.cut(ribbon(line(192, 47, 250, 62, 296, 78), widths(26, 22, 12)));
            c.land(ribbon(line(190, 47, 246, 61, 288, 75), widths(15, 12, 2.4)));
        } else {
            c.land(ribbon(line(190, 47, 244, 60, 276, 70), widths(12, 6.5, 1.2)));
        }
        c.land(disc(190, 46, 9.5));
        c.cut(ribbon(line(202, 50, 236, 59, recut ? 268 : 256, recut ? 69 : 65), widths(1.6, 1.6, 0.5)));
        for (int i = 0; i < 3; i++) {
            c.land(ribbon(line(182, 40, 150, 26 + i * 6, 112 + i * 8, 30 + i * 12), widths(5, 4, 1)));
        }
        c.cell(disc(190, 44.5, 3));
        c.hole(190, 44.5, 1.5);
        extraHoles(c);
    }

    /** Seven drops in the air over the weir. */
    private static void extraHoles(Carver c) {
        double[][] drops = {{262, 118}, {292, 128}, {322, 112}, {352, 132}, {312, 141}, {248, 96}, {336, 84}};
        for (double[] d : drops) {
            c.land(blob(d[0] + 14, d[1] - 11, d[0] + 22.5, d[1] + 4, d[0] + 14, d[1] + 12, d[0] + 5.5, d[1] + 4));
            c.cell(disc(d[0] + 14, d[1] + 3.4, 4.2));
            c.hole(d[0] + 14, d[1] + 3.4, 2);
        }
    }
}
