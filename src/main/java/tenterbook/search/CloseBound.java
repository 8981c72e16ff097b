package tenterbook.search;

/**
 * Bounds of CIEDE2000 that are within about a thousandth of it and take a fifth of its time: without an angle, an exponential or
 * a trigonometric function.
 *
 * <p>Names as in Sharma, Wu, Dalal 2005 and {@link BoxBound}: ΔE00² = l² + c² + h² + RT·c·h.
 *
 * <ol>
 *   <li>l, c, ΔH'² and the stretch of a need no angle (see {@link ColourBound}).
 *   <li>Where neither chroma is 0 and the hues are not opposite, the mean hue is the direction of the sum of both unit vectors:
 *       its cosine and sine come by a square root, those of its doubles, triples and fourfolds by addition theorems, and so T.
 *   <li>Δθ falls with the distance from 275°, that is, grows with its cosine. A table over that cosine gives sin 2Δθ at both ends
 *       of the step it lies in; the one makes the sum smaller, the other greater. The standard counts that distance within 0° to 360°
 *       and not round the circle, which differs only beyond 75°; there the lesser end is 0.
 *   <li>The sign of c·h is that of ΔC' times the side on which the second hue lies.
 * </ol>
 *
 * <p>Elsewhere the bounds of {@link ColourBound} are given. Rounding is below {@link ColourBound#SLACK} in the square. One thread.
 */
final class CloseBound {
    private static final double POW7_25 = 6103515625.0;
    private static final double COS_30 = Math.cos(Math.toRadians(30));
    private static final double SIN_30 = 0.5;
    private static final double COS_6 = Math.cos(Math.toRadians(6));
    private static final double SIN_6 = Math.sin(Math.toRadians(6));
    private static final double COS_63 = Math.cos(Math.toRadians(63));
    private static final double SIN_63 = Math.sin(Math.toRadians(63));
    private static final double COS_275 = Math.cos(Math.toRadians(275));
    private static final double SIN_275 = Math.sin(Math.toRadians(275));
    private static final double COS_75 = Math.cos(Math.toRadians(75));
    private static final int STEPS = 4096;
    /** sin 2Δθ where the cosine of the distance from 275° is 2i/{@value #STEPS} − 1. */
    private static final double[] TURN = new double[STEPS + 1];

    static {
        for (int i = 0; i <= STEPS; i++) {
            double degrees = Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, 2.0 * i / STEPS - 1))));
            double x = degrees / 25;
            TURN[i] = Math.sin(Math.toRadians(60) * Math.exp(-x * x));
        }
    }

    private final double L1;
    private final double a1;
    private final double b1;
    private final double C1;
    private final ColourBound plain = new ColourBound();
    /** ΔE00² to the colour compared last is at least this, but for the slack. */
    double least2;
    /** ΔE00² to the colour compared last is at most this, but for the slack. */
    double most2;

    CloseBound(double L, double a, double b) {
        L1 = L;
        a1 = a;
        b1 = b;
        C1 = Math.sqrt(a * a + b * b);
    }

    /** ΔE00 is at least this; the slack is taken away already. */
    double least(double L2, double a2, double b2) {
        compare(L2, a2, b2);
        return Math.sqrt(Math.max(0, least2 - ColourBound.SLACK));
    }

    /** Bounds ΔE00² from both sides. */
    void compare(double L2, double a2, double b2) {
        double l2 = ColourBound.squaredByLightness(L1, L2);
        double C2 = Math.sqrt(a2 * a2 + b2 * b2);
        double C7 = pow7((C1 + C2) / 2);
        double stretch = 1.5 - 0.5 * Math.sqrt(C7 / (C7 + POW7_25));
        double x1 = a1 * stretch;
        double x2 = a2 * stretch;
        double C1s = Math.sqrt(x1 * x1 + b1 * b1);
        double C2s = Math.sqrt(x2 * x2 + b2 * b2);
        double product = C1s * C2s;
        double x = x1 * C2s + x2 * C1s;
        double y = b1 * C2s + b2 * C1s;
        double length = Math.sqrt(x * x + y * y);
        if (!(length > 1e-3 * product) || product < 1e-6) {
            plain.compare(l2, a1, b1, C1, a2, b2, C2);
            least2 = plain.least2;
            most2 = plain.most2;
            return;
        }
        double cos = x / length;
        double sin = y / length;
        double cos2 = cos * cos - sin * sin;
        double sin2 = 2 * sin * cos;
        double cos3 = cos2 * cos - sin2 * sin;
        double sin3 = sin2 * cos + cos2 * sin;
        double cos4 = cos2 * cos2 - sin2 * sin2;
        double sin4 = 2 * sin2 * cos2;
        double T = 1
                - 0.17 * (cos * COS_30 + sin * SIN_30)
                + 0.24 * cos2
                + 0.32 * (cos3 * COS_6 - sin3 * SIN_6)
                - 0.20 * (cos4 * COS_63 + sin4 * SIN_63);
        double meanC = (C1s + C2s) / 2;
        double dC = C2s - C1s;
        double across = x1 * b2 - x2 * b1;
        double c = dC / (1 + 0.045 * meanC);
        double h = Math.sqrt(ColourBound.squaredByHue(product, x1 * x2 + b1 * b2, across)) / (1 + 0.015 * meanC * T);
        double meanC7 = pow7(meanC);
        double rotation = 2 * Math.sqrt(meanC7 / (meanC7 + POW7_25));
        double signed = across < 0 ? -c * h : c * h;
        double near = cos * COS_275 + sin * SIN_275;
        int below = Math.max(0, Math.min(STEPS - 1, (int) ((near + 1) * (STEPS / 2.0) - 1e-9)));
        double most = rotation * TURN[below + 1] * signed;
        double least = near > COS_75 ? rotation * TURN[below] * signed : 0;
        double straight = l2 + c * c + h * h;
        least2 = straight - Math.max(least, most);
        most2 = straight - Math.min(least, most);
    }

    private static double pow7(double x) {
        double cube = x * x * x;
        return cube * cube * x;
    }
}
