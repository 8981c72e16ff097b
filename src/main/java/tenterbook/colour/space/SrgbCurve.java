package tenterbook.colour.space;

/** The transfer curve of sRGB (IEC 61966-2-1), between encoded levels and linear light. */
public final class SrgbCurve {
    private static final double[] LINEAR = new double[256];

    static {
        for (int i = 0; i < 256; i++) {
            double encoded = i / 255.0;
            LINEAR[i] = encoded <= 0.04045 ? encoded / 12.92 : Math.pow((encoded + 0.055) / 1.055, 2.4);
        }
    }

    private SrgbCurve() {}

    /** Linear light, 0 to 1, of an encoded level 0 to 255. */
    public static double linear(int level) {
        return LINEAR[level];
    }

    /** The nearest encoded level, 0 to 255; light outside 0 to 1 is clamped. */
    public static int encoded(double linear) {
        double clamped = Math.max(0, Math.min(1, linear));
        double encoded = clamped <= 0.0031308 ? clamped * 12.92 : 1.055 * Math.pow(clamped, 1 / 2.4) - 0.055;
        return (int) Math.round(encoded * 255);
    }
}
