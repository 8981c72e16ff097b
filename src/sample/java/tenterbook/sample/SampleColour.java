package tenterbook.sample;

/**
 * Just enough colour for drawing: CIELAB (D65, 2 degrees) to linear sRGB and back. To be replaced by tenterbook.colour
 * when that room is wired in.
 *
 * @see "IEC 61966-2-1:1999 for the primaries and the transfer curve; CIE 15 for CIELAB"
 */
final class SampleColour {
    private static final double[] WHITE = {0.95047, 1.0, 1.08883};
    /** Dye never takes all the light, and the renderer divides by it. */
    private static final double DARKEST = 0.0015;

    private static final int STEPS = 8192;
    private static final float[] CURVE = curve();

    private SampleColour() {}

    /** @param l 0 to 100 */
    record Lab(double l, double a, double b) {
        double distance(Lab other) {
            return Math.sqrt(Math.pow(l - other.l, 2) + Math.pow(a - other.a, 2) + Math.pow(b - other.b, 2));
        }
    }

    /** Linear sRGB, 0 to 1; colours outside sRGB are brought to its edge. */
    static double[] linear(Lab lab) {
        double fy = (lab.l() + 16) / 116;
        double x = WHITE[0] * inverse(fy + lab.a() / 500);
        double y = WHITE[1] * inverse(fy);
        double z = WHITE[2] * inverse(fy - lab.b() / 200);
        double[] rgb = {
            3.2404542 * x - 1.5371385 * y - 0.4985314 * z,
            -0.9692660 * x + 1.8760108 * y + 0.0415560 * z,
            0.0556434 * x - 0.2040259 * y + 1.0572252 * z
        };
        for (int i = 0; i < 3; i++) {
            rgb[i] = Math.max(DARKEST, Math.min(0.995, rgb[i]));
        }
        return rgb;
    }

    static Lab lab(double r, double g, double b) {
        double x = 0.4124564 * r + 0.3575761 * g + 0.1804375 * b;
        double y = 0.2126729 * r + 0.7151522 * g + 0.0721750 * b;
        double z = 0.0193339 * r + 0.1191920 * g + 0.9503041 * b;
        double fx = forward(x / WHITE[0]);
        double fy = forward(y / WHITE[1]);
        double fz = forward(z / WHITE[2]);
        return new Lab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
    }

    private static double inverse(double f) {
        return f > 6.0 / 29 ? f * f * f : (f - 4.0 / 29) * 108 / 841;
    }

    private static double forward(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : (t * 841 / 108 + 4.0 / 29);
    }

    /** Encoded sRGB, 0 to 255, from linear light; values outside 0 to 1 are clipped as a camera clips. */
    static double encode(double linear) {
        double v = Math.max(0, Math.min(1, linear));
        return 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * Math.pow(v, 1 / 2.4) - 0.055);
    }

    /** As {@link #encode}, from a table: within 0.02 of a level, for millions of pixels. */
    static double encodeFast(double linear) {
        double at = Math.max(0, Math.min(1, linear)) * (CURVE.length - 2);
        int i = (int) at;
        return CURVE[i] + (CURVE[i + 1] - CURVE[i]) * (at - i);
    }

    private static float[] curve() {
        float[] table = new float[STEPS + 2];
        for (int i = 0; i < table.length; i++) {
            table[i] = (float) encode((double) i / STEPS);
        }
        return table;
    }

    static double decode(int encoded) {
        double v = encoded / 255.0;
        return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    /** Absorption over scattering, K/S, of an opaque layer (Kubelka and Munk 1931). */
    static double absorption(double reflectance) {
        return (1 - reflectance) * (1 - reflectance) / (2 * reflectance);
    }

    static double reflectance(double absorption) {
        return 1 + absorption - Math.sqrt(absorption * absorption + 2 * absorption);
    }
}
