package tenterbook.colour.target;

import java.util.Locale;
import tenterbook.colour.space.Lab;
import tenterbook.words.Refusal;

/**
 * The reference white of a colour, 2° observer, with adaptation by the linear Bradford transform.
 *
 * @see "D65: chromaticity 0.3127, 0.3290, IEC 61966-2-1. D50: X 0.9642, Z 0.8249, ICC.1, which the chart's source uses.
 *     Transform: ICC.1, annex E. From memory, checked against an independent library's numbers in the tests"
 */
public enum WhitePoint {
    /** Daylight of about 6500 K: screens, and all colours of this archive. */
    D65(0.3127 / 0.3290, (1 - 0.3127 - 0.3290) / 0.3290),
    /** Of about 5000 K: print tables and many instruments. */
    D50(0.9642, 0.8249);

    private static final double EPSILON = 216.0 / 24389;
    private static final double KAPPA = 24389.0 / 27;
    private static final Matrix3 CONES =
            new Matrix3(0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296);

    private final double x;
    private final double z;

    WhitePoint(double x, double z) {
        this.x = x;
        this.z = z;
    }

    /**
     * Reads {@code D65} or {@code D50}; nothing typed means D65.
     *
     * @throws IllegalArgumentException if it is neither, saying what was found
     */
    public static WhitePoint parse(String text) {
        String word = text == null ? "" : text.strip().toUpperCase(Locale.ROOT);
        if (word.isEmpty()) {
            return D65;
        }
        for (WhitePoint each : values()) {
            if (each.name().equals(word)) {
                return each;
            }
        }
        throw Refusal.of("card.illuminant", "found", text.strip());
    }

    /** X, Y, Z of this white, Y = 1. */
    public double[] xyz() {
        return new double[] {x, 1, z};
    }

    /** X, Y, Z (white Y = 1) of a CIELAB colour relative to this white. */
    public double[] xyz(Lab lab) {
        double fy = (lab.lightness() + 16) / 116;
        return new double[] {x * inverse(fy + lab.a() / 500), inverse(fy), z * inverse(fy - lab.b() / 200)};
    }

    /** CIELAB of X, Y, Z (white Y = 1) under this white. */
    public Lab lab(double[] xyz) {
        double fx = forward(xyz[0] / x);
        double fy = forward(xyz[1]);
        double fz = forward(xyz[2] / z);
        return new Lab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
    }

    /** X, Y, Z adapted from this white to {@code other}. */
    public double[] adapt(double[] xyz, WhitePoint other) {
        if (other == this) {
            return xyz.clone();
        }
        double[] from = CONES.times(xyz());
        double[] to = CONES.times(other.xyz());
        double[] cones = CONES.times(xyz);
        for (int i = 0; i < 3; i++) {
            cones[i] *= to[i] / from[i];
        }
        return CONES.inverse().times(cones);
    }

    /** The colour adapted from this white to {@code other}. */
    public Lab adapt(Lab lab, WhitePoint other) {
        return other == this ? lab : other.lab(adapt(xyz(lab), other));
    }

    private static double forward(double t) {
        return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
    }

    private static double inverse(double f) {
        double cube = f * f * f;
        return cube > EPSILON ? cube : (116 * f - 16) / KAPPA;
    }
}
