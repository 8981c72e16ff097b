package tenterbook.search;

/**
 * The angle of a point to within a ten-millionth, in a fraction of the time of {@link Math#atan2}: for bounds, which leave more
 * than that.
 *
 * @see "Abramowitz, Stegun 1964, Handbook of Mathematical Functions, formula 4.4.49: the polynomial is within 2·10⁻⁸ of atan(x)
 *     from −1 to 1"
 */
final class NearAngle {
    /** No angle given is farther than this from the true one. */
    static final double ERROR = 1e-7;

    private NearAngle() {}

    /**
     * @param y finite; at least one of both not 0
     * @param x finite
     * @return radians, from −π to π
     */
    static double of(double y, double x) {
        double wide = Math.abs(x);
        double high = Math.abs(y);
        double ratio = Math.min(wide, high) / Math.max(wide, high);
        double r = ratio * ratio;
        double atan = 0.0028662257;
        atan = atan * r - 0.0161657367;
        atan = atan * r + 0.0429096138;
        atan = atan * r - 0.0752896400;
        atan = atan * r + 0.1065626393;
        atan = atan * r - 0.1420889944;
        atan = atan * r + 0.1999355085;
        atan = atan * r - 0.3333314528;
        atan = atan * r * ratio + ratio;
        double steep = high > wide ? Math.PI / 2 - atan : atan;
        double left = x < 0 ? Math.PI - steep : steep;
        return y < 0 ? -left : left;
    }
}
