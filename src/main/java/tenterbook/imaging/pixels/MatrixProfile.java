package tenterbook.imaging.pixels;

import java.awt.color.CMMException;
import java.awt.color.ICC_Profile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.RgbSpace;
import tenterbook.colour.target.WhitePoint;

/**
 * A profile of three curves and three primaries, as cameras and phones embed it, read without clipping to sRGB. Java's own
 * conversion ends at what sRGB can show, and cannot read parametric curves one by one.
 *
 * @see "ICC.1:2010, 8.3.3 (three-component matrix-based profiles), 10.5 (curveType), 10.15 (parametricCurveType)"
 */
final class MatrixProfile {
    private static final int LEVELS = 256;
    private static final int CURVE = 0x63757276;
    private static final int PARAMETRIC = 0x70617261;
    private static final int XYZ = 0x58595a20;
    /** A2B0: where a profile has a table of colours, that goes before its matrix. */
    private static final int TABLE = 0x41324230;
    /** Numbers that each kind of parametric curve has. */
    private static final int[] PARAMETERS = {1, 3, 4, 5, 7};

    private MatrixProfile() {}

    /** Empty if the profile is of another kind or one of its parts cannot be read; its pictures are then measured in sRGB. */
    static Optional<RgbSpace> of(ICC_Profile profile) {
        try {
            if (profile.getData(TABLE) != null) {
                return Optional.empty();
            }
            double[][] curves = {
                curve(profile.getData(ICC_Profile.icSigRedTRCTag)),
                curve(profile.getData(ICC_Profile.icSigGreenTRCTag)),
                curve(profile.getData(ICC_Profile.icSigBlueTRCTag))
            };
            return Optional.of(RgbSpace.of(
                    curves,
                    primary(profile.getData(ICC_Profile.icSigRedColorantTag)),
                    primary(profile.getData(ICC_Profile.icSigGreenColorantTag)),
                    primary(profile.getData(ICC_Profile.icSigBlueColorantTag))));
        } catch (IllegalArgumentException
                | IllegalStateException
                | CMMException
                | java.nio.BufferUnderflowException e) {
            return Optional.empty();
        }
    }

    private static ByteBuffer tag(byte @Nullable [] bytes) {
        if (bytes == null) {
            throw new IllegalStateException("a part of the profile is missing");
        }
        return ByteBuffer.wrap(bytes).order(ByteOrder.BIG_ENDIAN);
    }

    private static LinearRgb primary(byte @Nullable [] bytes) {
        ByteBuffer in = tag(bytes);
        if (in.getInt() != XYZ) {
            throw new IllegalStateException("a primary is no XYZ");
        }
        in.getInt();
        double[] d50 = {fixed(in), fixed(in), fixed(in)};
        return LinearRgb.of(WhitePoint.D65.lab(WhitePoint.D50.adapt(d50, WhitePoint.D65)));
    }

    private static double[] curve(byte @Nullable [] bytes) {
        ByteBuffer in = tag(bytes);
        int type = in.getInt();
        in.getInt();
        return switch (type) {
            case CURVE -> sampled(in);
            case PARAMETRIC -> parametric(in);
            default -> throw new IllegalStateException("a curve of another type");
        };
    }

    private static double[] sampled(ByteBuffer in) {
        double[] points = new double[Math.min(in.getInt(), in.remaining() / 2)];
        for (int i = 0; i < points.length; i++) {
            points[i] = in.getShort() & 0xffff;
        }
        double[] curve = new double[LEVELS];
        for (int level = 0; level < LEVELS; level++) {
            double x = level / (LEVELS - 1.0);
            if (points.length < 2) {
                curve[level] = Math.pow(x, points.length == 0 ? 1 : points[0] / 256);
            } else {
                double at = x * (points.length - 1);
                int below = (int) Math.min(points.length - 2, Math.floor(at));
                curve[level] = (points[below] + (at - below) * (points[below + 1] - points[below])) / 65535;
            }
        }
        return curve;
    }

    private static double[] parametric(ByteBuffer in) {
        int kind = in.getShort();
        in.getShort();
        if (kind < 0 || kind >= PARAMETERS.length) {
            throw new IllegalStateException("a parametric curve of another kind");
        }
        double[] p = new double[7];
        for (int i = 0; i < PARAMETERS[kind]; i++) {
            p[i] = fixed(in);
        }
        double[] curve = new double[LEVELS];
        for (int level = 0; level < LEVELS; level++) {
            curve[level] = value(kind, p, level / (LEVELS - 1.0));
        }
        return curve;
    }

    /** @param p g, a, b, c, d, e, f of table 65 */
    private static double value(int kind, double[] p, double x) {
        double power = kind == 0 ? Math.pow(x, p[0]) : Math.pow(Math.max(0, p[1] * x + p[2]), p[0]);
        return switch (kind) {
            case 0 -> power;
            case 1 -> x >= -p[2] / p[1] ? power : 0;
            case 2 -> x >= -p[2] / p[1] ? power + p[3] : p[3];
            case 3 -> x >= p[4] ? power : p[3] * x;
            default -> x >= p[4] ? power + p[5] : p[3] * x + p[6];
        };
    }

    /** s15Fixed16Number. */
    private static double fixed(ByteBuffer in) {
        return in.getInt() / 65536.0;
    }
}
