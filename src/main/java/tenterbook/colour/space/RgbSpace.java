package tenterbook.colour.space;

import org.jspecify.annotations.Nullable;

/**
 * What light the numbers of a picture stand for: a curve for each channel, then its primaries. A colour outside sRGB has a
 * component below 0 or above 1 and is not clipped.
 */
public final class RgbSpace {
    public static final RgbSpace SRGB = new RgbSpace(srgbCurves(), null);

    private final double[][] curves;
    private final double @Nullable [] primaries;

    private RgbSpace(double[][] curves, double @Nullable [] primaries) {
        this.curves = curves;
        this.primaries = primaries;
    }

    /**
     * @param curves for red, green and blue: the light, 0 to 1, of levels 0 to 255
     * @param red linear sRGB of this space's red at full light; so green and blue
     */
    public static RgbSpace of(double[][] curves, LinearRgb red, LinearRgb green, LinearRgb blue) {
        return new RgbSpace(curves, new double[] {
            red.red(), green.red(), blue.red(),
            red.green(), green.green(), blue.green(),
            red.blue(), green.blue(), blue.blue()
        });
    }

    /** Linear light in sRGB primaries of a pixel 0xAARRGGBB in this space. */
    public LinearRgb linear(int pixel) {
        double r = curves[0][pixel >> 16 & 0xff];
        double g = curves[1][pixel >> 8 & 0xff];
        double b = curves[2][pixel & 0xff];
        double[] m = primaries;
        return m == null
                ? new LinearRgb(r, g, b)
                : new LinearRgb(
                        m[0] * r + m[1] * g + m[2] * b, m[3] * r + m[4] * g + m[5] * b, m[6] * r + m[7] * g + m[8] * b);
    }

    private static double[][] srgbCurves() {
        double[] curve = new double[256];
        for (int level = 0; level < curve.length; level++) {
            curve[level] = SrgbCurve.linear(level);
        }
        return new double[][] {curve, curve, curve};
    }
}
