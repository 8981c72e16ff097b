package tenterbook.search.colour;

import tenterbook.colour.space.Ciede2000;

/**
 * Bounds of CIEDE2000 between one colour and another that are within about a thousandth of it and take a fifth of its time: without
 * an angle, an exponential or a trigonometric function. Holds the last answer; one thread.
 *
 * <p>Names as in Sharma, Wu, Dalal 2005, with kL = kC = kH = 1: l = ΔL'/SL, c = ΔC'/SC, h = ΔH'/SH, ΔE00² = l² + c² + h² + RT·c·h.
 *
 * <ol>
 *   <li>l, c and the stretch 1 + G of a need no angle.
 *   <li>ΔH'² = 4·C1'·C2'·sin²(Δh'/2) = 2·(C1'·C2' − dot), with dot = a1'a2' + b1b2. Where that cancels it is 2·across²/(C1'·C2' +
 *       dot), with across = a1'b2 − a2'b1, because (C1'C2')² − dot² = across².
 *   <li>Where neither chroma is 0 and the hues are not opposite, the mean hue is the direction of the sum of both unit vectors:
 *       its cosine and sine come by a square root, those of its doubles, triples and fourfolds by addition theorems, and so T.
 *   <li>Δθ falls with the distance from 275°, that is, grows with its cosine. A table over that cosine gives sin 2Δθ at both ends
 *       of the step it lies in; the one makes the sum smaller, the other greater. The standard counts that distance within 0° to 360°
 *       and not round the circle, which differs only beyond 75°; there the lesser end is 0.
 *   <li>The sign of c·h is that of ΔC' times the side on which the second hue lies.
 * </ol>
 *
 * <p>Elsewhere both bounds are the formula itself. Rounding is below {@link BoxBound#SLACK} in the square.
 */
final class CloseBound {
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
    private double least2;
    private double most2;

    CloseBound(double L, double a, double b) {
        L1 = L;
        a1 = a;
        b1 = b;
        C1 = Math.sqrt(a * a + b * b);
    }

    /** ΔE00² to the colour compared last is at least this, but for the slack. */
    double least2() {
        return least2;
    }

    /** ΔE00² to the colour compared last is at most this, but for the slack. */
    double most2() {
        return most2;
    }

    /** ΔE00 is at least this; the slack is taken away already. */
    double least(double L2, double a2, double b2) {
        compare(L2, a2, b2);
        return Math.sqrt(Math.max(0, least2 - BoxBound.SLACK));
    }

    /** ΔE00 by the formula. */
    double exact(double L2, double a2, double b2) {
        return Ciede2000.difference(L1, a1, b1, L2, a2, b2);
    }

    /** Bounds ΔE00² from both sides. */
    void compare(double L2, double a2, double b2) {
        double stretch = 1.5 - 0.5 * Ciede2000.chromaRatio((C1 + Math.sqrt(a2 * a2 + b2 * b2)) / 2);
        double x1 = a1 * stretch;
        double x2 = a2 * stretch;
        double C1s = Math.sqrt(x1 * x1 + b1 * b1);
        double C2s = Math.sqrt(x2 * x2 + b2 * b2);
        double product = C1s * C2s;
        double x = x1 * C2s + x2 * C1s;
        double y = b1 * C2s + b2 * C1s;
        double length = Math.sqrt(x * x + y * y);
        if (!(length > 1e-3 * product) || product < 1e-6) {
            double difference = exact(L2, a2, b2);
            least2 = difference * difference;
            most2 = least2;
            return;
        }
        double cos = x / length;
        double sin = y / length;
        double meanC = (C1s + C2s) / 2;
        double dot = x1 * x2 + b1 * b2;
        double across = x1 * b2 - x2 * b1;
        double H2 = dot > 0 ? 2 * across * across / (product + dot) : 2 * (product - dot);
        double l = BoxBound.l(L1, L2);
        double c = (C2s - C1s) / (1 + 0.045 * meanC);
        double h = Math.sqrt(H2) / (1 + 0.015 * meanC * T(cos, sin));
        double signed = 2 * Ciede2000.chromaRatio(meanC) * (across < 0 ? -c * h : c * h);
        double near = cos * COS_275 + sin * SIN_275;
        int below = Math.max(0, Math.min(STEPS - 1, (int) ((near + 1) * (STEPS / 2.0) - 1e-9)));
        double most = TURN[below + 1] * signed;
        double least = near > COS_75 ? TURN[below] * signed : 0;
        double straight = l * l + c * c + h * h;
        least2 = straight - Math.max(least, most);
        most2 = straight - Math.min(least, most);
    }

    private static double T(double cos, double sin) {
        double cos2 = cos * cos - sin * sin;
        double sin2 = 2 * sin * cos;
        double cos3 = cos2 * cos - sin2 * sin;
        double sin3 = sin2 * cos + cos2 * sin;
        double cos4 = cos2 * cos2 - sin2 * sin2;
        double sin4 = 2 * sin2 * cos2;
        return 1
                - 0.17 * (cos * COS_30 + sin * SIN_30)
                + 0.24 * cos2
                + 0.32 * (cos3 * COS_6 - sin3 * SIN_6)
                - 0.20 * (cos4 * COS_63 + sin4 * SIN_63);
    }
}
