package tenterbook.sample;

import static tenterbook.sample.Carver.blob;
import static tenterbook.sample.Carver.line;
import static tenterbook.sample.Carver.oval;
import static tenterbook.sample.Carver.ribbon;
import static tenterbook.sample.Carver.widths;

/** B03: nine swifts turning on the wind. Wild cherry, 360 x 260 mm, 9 holes: one at each throat. */
final class NineSwifts {
    private static final double[][] FLIGHT = {
        {80, 66, -62, 1.0},
        {190, 56, -18, 0.92},
        {292, 72, 22, 1.0},
        {318, 172, 84, 0.92},
        {254, 214, 146, 0.86},
        {146, 212, 196, 0.95},
        {50, 188, 238, 0.9},
        {134, 132, -40, 0.72},
        {232, 136, 60, 0.7}
    };

    private NineSwifts() {}

    static Motif carve() {
        Carver c = new Carver();
        wind(c);
        for (double[] s : FLIGHT) {
            swift(c, s[0], s[1], s[2], s[3]);
        }
        c.scatter(360, 260, 5.5, 31, k -> k.land(ribbon(line(-4, 0, 4, 0), widths(0.8, 2.8, 0.8))));
        return c.finish("B03", 360, 260);
    }

    /** Long bands of wind that leave the edges square, so that they meet their mirror images. */
    private static void wind(Carver c) {
        for (int i = 0; i < 7; i++) {
            double y = 4 + i * 42;
            c.land(ribbon(
                    line(-8, y, 60, y + 14, 130, y - 10, 200, y + 12, 280, y - 12, 368, y),
                    widths(3.4, 5.4, 1.8, 5.4, 2, 3.4)));
            c.land(ribbon(line(-8, y + 11, 40, y + 18, 110, y + 3, 150, y + 8), widths(2.2, 3.2, 2.6, 0.6)));
            c.land(ribbon(line(368, y + 11, 320, y + 6, 260, y - 1, 216, y + 20), widths(2.2, 3.2, 2.6, 0.6)));
        }
    }

    private static void swift(Carver c, double x, double y, double turn, double size) {
        c.at(x, y, turn, size, size);
        double[] wings = line(-46, -62, -12, -48, 8, -22, 14, 0, 8, 22, -12, 48, -46, 62);
        double[] body = line(-46, 0, -24, 0, 6, 0, 34, 0);
        c.cut(ribbon(wings, widths(8, 22, 32, 36, 32, 22, 8)));
        c.cut(ribbon(body, widths(26, 26, 34, 20)));
        c.land(ribbon(wings, widths(0.8, 11, 20, 24, 20, 11, 0.8)));
        c.land(ribbon(body, widths(7, 13, 22, 9)));
        for (int side = -1; side <= 1; side += 2) {
            c.land(ribbon(line(-40, 0, -56, side * 6, -72, side * 15), widths(7, 8, 0.8)));
            c.cut(ribbon(line(9, side * 9, 3, side * 24, -13, side * 46, -32, side * 56), widths(1, 2.4, 2, 0.5)));
            for (int i = 0; i < 5; i++) {
                double at = 15 + i * 7.5;
                double wx = 6 - i * i * 1.05;
                c.cut(ribbon(line(wx - 1, side * at, wx - 8 - i, side * (at - 1)), widths(1.6, 0.5)));
            }
            c.cut(ribbon(line(-36, side * 1.5, -18, side * 4.5, -2, side * 3), widths(0.6, 1.8, 0.6)));
        }
        c.land(blob(30, -4.5, 40, 0, 30, 4.5, 24, 0));
        c.cell(oval(20, 0, 6.4, 4));
        c.hole(20, 0, 2);
    }
}
