package tenterbook.facts;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.measure.Quantity;
import tenterbook.measure.Threshold;
import tenterbook.measure.Unit;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;

/**
 * How large what a photograph shows is: from the recorded size of the piece and the outline of its cloth. Known only where both
 * are, where the outline is that of a flat rectangle, and where both sides give the same scale; it holds in the plane of the
 * cloth alone.
 *
 * @param widthMm what the picture's whole width spans in the plane of the cloth, millimetres; 0 where it is not known
 * @param disagreement how far the scales by length and by width differ, as a part of their mean
 */
public record PhotographScale(double widthMm, double disagreement) {
    public static final PhotographScale UNKNOWN = new PhotographScale(0, 0);

    /** Beyond it the cloth lies askew, is folded, or was measured at another time: judged on the sample's photographs. */
    private static final double MOST_DISAGREEMENT = Threshold.number("scale-sides");

    /** Less of the rectangle around it, and the cloth is no flat rectangle seen from above; a hem drawn by hand fills 0.95. */
    private static final double LEAST_FILLED = 0.9;

    /** Between two directions tried, in degrees: what that adds to a side four times as long as the other is below 1 %. */
    private static final double STEP = 0.25;

    public boolean known() {
        return widthMm > 0;
    }

    /**
     * @param photo null where its record cannot be read
     * @param seen the cloth on it
     */
    public static PhotographScale of(Piece piece, PiecePhoto shown, @Nullable Photo photo, SeenCloth seen) {
        return photo == null || photo.width() == null || photo.height() == null
                ? UNKNOWN
                : of(piece.length(), piece.width(), shown.role(), photo.width(), photo.height(), seen.outline());
    }

    /**
     * @param role only a photograph of the whole front or back has a scale
     * @param across of the upright picture, pixels, as is {@code down}
     */
    static PhotographScale of(
            Quantity length, Quantity width, @Nullable PhotoRole role, int across, int down, ClothOutline outline) {
        boolean whole = role == PhotoRole.FRONT || role == PhotoRole.BACK;
        boolean edge = outline.edge() == Edge.DRAWN || outline.edge() == Edge.FOUND;
        if (!whole || !edge || !exact(length) || !exact(width)) {
            return UNKNOWN;
        }
        double longMm = Math.max(millimetres(length), millimetres(width));
        double shortMm = Math.min(millimetres(length), millimetres(width));
        return of(outline.corners(), across, down, longMm, shortMm);
    }

    private static boolean exact(Quantity side) {
        return side.known() && side.low() != null && side.low().equals(side.high()) && side.low() > 0;
    }

    private static double millimetres(Quantity side) {
        return side.unit().convert(side.low(), Unit.MILLIMETRE);
    }

    private static PhotographScale of(List<Corner> corners, int across, int down, double longMm, double shortMm) {
        Rectangle around = around(corners, across, down);
        double byLength = longMm / Math.max(around.side, around.other);
        double byWidth = shortMm / Math.min(around.side, around.other);
        double mean = Math.sqrt(byLength * byWidth);
        double disagreement = Math.abs(byLength - byWidth) / mean;
        boolean flat = area(corners) * across * down >= LEAST_FILLED * around.area();
        return flat && disagreement <= MOST_DISAGREEMENT ? new PhotographScale(mean * across, disagreement) : UNKNOWN;
    }

    /** Sides in pixels. */
    private record Rectangle(double side, double other) {
        double area() {
            return side * other;
        }
    }

    /** The rectangle of least area around the outline. */
    private static Rectangle around(List<Corner> corners, int across, int down) {
        Rectangle least = null;
        for (double degrees = 0; degrees < 90; degrees += STEP) {
            double cos = Math.cos(Math.toRadians(degrees));
            double sin = Math.sin(Math.toRadians(degrees));
            Rectangle turned = new Rectangle(
                    spread(corners, across * cos, down * sin), spread(corners, -across * sin, down * cos));
            least = least == null || turned.area() < least.area() ? turned : least;
        }
        return least;
    }

    /** How far the corners lie apart along a direction. */
    private static double spread(List<Corner> corners, double x, double y) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (Corner corner : corners) {
            double at = corner.x() * x + corner.y() * y;
            from = Math.min(from, at);
            to = Math.max(to, at);
        }
        return to - from;
    }

    /** As a part of the picture, by the shoelace formula. */
    private static double area(List<Corner> corners) {
        double twice = 0;
        for (int i = 0; i < corners.size(); i++) {
            Corner p = corners.get(i);
            Corner q = corners.get((i + 1) % corners.size());
            twice += p.x() * q.y() - q.x() * p.y();
        }
        return Math.abs(twice) / 2;
    }
}
