package tenterbook.colour.compare;

/**
 * The similarity transformation from the earlier to the later picture: rotation and scaling about the middle, then a shift.
 * Pixel centres at whole numbers, x to the right, y down.
 *
 * @param scale pixels of the later picture per pixel of the earlier, above 0
 * @param degrees rotation, clockwise as seen, -90 to 90
 * @param dx pixels of the later picture, to the right
 * @param dy pixels of the later picture, down
 * @param correlation of lightness after alignment, 0 to 1
 * @param middle1X middle of the earlier picture, pixels
 * @param middle1Y the same, down
 * @param middle2X middle of the later picture, pixels
 * @param middle2Y the same, down
 */
public record Alignment(
        double scale,
        double degrees,
        double dx,
        double dy,
        double correlation,
        double middle1X,
        double middle1Y,
        double middle2X,
        double middle2Y)
        implements Likeness.Place {

    /** The position in the later picture of a pixel of the earlier one. */
    @Override
    public double x(double x, double y) {
        double turn = Math.toRadians(degrees);
        return middle2X + dx + scale * (Math.cos(turn) * (x - middle1X) - Math.sin(turn) * (y - middle1Y));
    }

    @Override
    public double y(double x, double y) {
        double turn = Math.toRadians(degrees);
        return middle2Y + dy + scale * (Math.sin(turn) * (x - middle1X) + Math.cos(turn) * (y - middle1Y));
    }
}
