package tenterbook.colour.target;

import java.util.List;
import tenterbook.colour.palette.Region.Corner;

/**
 * The projective transformation from the unit square to four corners.
 *
 * @see "Heckbert 1989, Fundamentals of Texture Mapping and Image Warping, section 2.2.3; from memory, checked in the tests"
 */
record Perspective(double a, double b, double c, double d, double e, double f, double g, double h) {
    /** @param q images of (0,0), (1,0), (1,1), (0,1) */
    static Perspective of(List<Corner> q) {
        double x0 = q.get(0).x();
        double y0 = q.get(0).y();
        double dx1 = q.get(1).x() - q.get(2).x();
        double dx2 = q.get(3).x() - q.get(2).x();
        double sx = x0 - q.get(1).x() + q.get(2).x() - q.get(3).x();
        double dy1 = q.get(1).y() - q.get(2).y();
        double dy2 = q.get(3).y() - q.get(2).y();
        double sy = y0 - q.get(1).y() + q.get(2).y() - q.get(3).y();
        double base = dx1 * dy2 - dx2 * dy1;
        double g = (sx * dy2 - dx2 * sy) / base;
        double h = (dx1 * sy - sx * dy1) / base;
        return new Perspective(
                q.get(1).x() - x0 + g * q.get(1).x(),
                q.get(3).x() - x0 + h * q.get(3).x(),
                x0,
                q.get(1).y() - y0 + g * q.get(1).y(),
                q.get(3).y() - y0 + h * q.get(3).y(),
                y0,
                g,
                h);
    }

    Corner at(double u, double v) {
        double w = g * u + h * v + 1;
        return new Corner(inside((a * u + b * v + c) / w), inside((d * u + e * v + f) / w));
    }

    private static double inside(double part) {
        return Math.max(0, Math.min(1, part));
    }
}
