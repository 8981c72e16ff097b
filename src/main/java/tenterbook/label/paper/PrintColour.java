package tenterbook.label.paper;

import tenterbook.colour.Lab;
import tenterbook.label.layout.Tone;

/** A measured colour as sRGB for printing; what lies outside sRGB is brought to its edge channel by channel. */
final class PrintColour {
    private PrintColour() {}

    /**
     * @param lab CIELAB, D65, 2° observer
     * @see "CIE 15:2004 for CIELAB; IEC 61966-2-1:1999 for sRGB, matrix from XYZ"
     */
    static Tone of(Lab lab) {
        double fy = (lab.lightness() + 16) / 116;
        double x = 0.95047 * cubed(fy + lab.a() / 500);
        double y = cubed(fy);
        double z = 1.08883 * cubed(fy - lab.b() / 200);
        return new Tone(
                encoded(3.2404542 * x - 1.5371385 * y - 0.4985314 * z),
                encoded(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z),
                encoded(0.0556434 * x - 0.2040259 * y + 1.0572252 * z));
    }

    private static double cubed(double f) {
        return f > 6 / 29.0 ? f * f * f : 3 * 36 / 841.0 * (f - 4 / 29.0);
    }

    private static int encoded(double linear) {
        double in = Math.min(1, Math.max(0, linear));
        double out = in <= 0.0031308 ? 12.92 * in : 1.055 * Math.pow(in, 1 / 2.4) - 0.055;
        return (int) Math.round(out * 255);
    }
}
