package tenterbook.colour.space;

/**
 * Conversion between encoded sRGB and CIELAB, without allocation, for single colours and whole pictures.
 *
 * <p>Transfer curve: {@link SrgbCurve}. Matrix: computed exactly from the sRGB primaries and the D65 white of chromaticity
 * (0.3127, 0.3290), so that every grey has a = b = 0 (the four-decimal matrix of the standard leaves 0.008 on white). CIELAB:
 * CIE 15, 2° observer. Source of the fractions: W3C CSS Color Module Level 4, section "Sample code for color conversions"; from
 * memory, checked against two independent libraries in the tests.
 */
public final class SrgbToLab {
    private static final double EPSILON = 216.0 / 24389;
    private static final double KAPPA = 24389.0 / 27;
    private static final double WHITE_X = 0.3127 / 0.3290;
    private static final double WHITE_Z = (1 - 0.3127 - 0.3290) / 0.3290;

    private SrgbToLab() {}

    /** Writes L, a, b at {@code out[at]} to {@code out[at + 2]}; each component 0 to 255. */
    public static void convert(int red, int green, int blue, double[] out, int at) {
        ofLinear(SrgbCurve.linear(red), SrgbCurve.linear(green), SrgbCurve.linear(blue), out, at);
    }

    /** The same from linear light; components may lie outside 0 to 1. */
    public static void ofLinear(double r, double g, double b, double[] out, int at) {
        double fx = f((506752.0 / 1228815 * r + 87881.0 / 245763 * g + 12673.0 / 70218 * b) / WHITE_X);
        double fy = f(87098.0 / 409605 * r + 175762.0 / 245763 * g + 12673.0 / 175545 * b);
        double fz = f((7918.0 / 409605 * r + 87881.0 / 737289 * g + 1001167.0 / 1053270 * b) / WHITE_Z);
        out[at] = 116 * fy - 16;
        out[at + 1] = 500 * (fx - fy);
        out[at + 2] = 200 * (fy - fz);
    }

    /** Linear sRGB of a CIELAB colour; a component below 0 or above 1 lies outside what a screen can show. */
    public static double[] linearOf(double lightness, double a, double b) {
        double fy = (lightness + 16) / 116;
        double x = WHITE_X * inverse(fy + a / 500);
        double y = lightness > KAPPA * EPSILON ? fy * fy * fy : lightness / KAPPA;
        double z = WHITE_Z * inverse(fy - b / 200);
        return new double[] {
            12831.0 / 3959 * x - 329.0 / 214 * y - 1974.0 / 3959 * z,
            -851781.0 / 878810 * x + 1648619.0 / 878810 * y + 36519.0 / 878810 * z,
            705.0 / 12673 * x - 2585.0 / 12673 * y + 705.0 / 667 * z
        };
    }

    private static double f(double t) {
        return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
    }

    private static double inverse(double f) {
        double cube = f * f * f;
        return cube > EPSILON ? cube : (116 * f - 16) / KAPPA;
    }
}
