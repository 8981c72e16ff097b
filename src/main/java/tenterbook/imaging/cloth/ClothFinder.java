package tenterbook.imaging.cloth;

import java.util.List;
import tenterbook.colour.palette.ColourMixture;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.imaging.cloth.ClothOutline.Edge;

/**
 * Finds the cloth in a photograph: where it lies or hangs before something else, wholly in the picture or running out of it, or
 * fills it. What cannot be told apart is not guessed: the answer then says why no edge was found. The same picture always gives
 * the same outline.
 *
 * <p>Limits were fixed on rendered scenes of the seeds 1 to 20 of each kind of {@code tenterbook.sample.OutlineScene} and are
 * reported for others by {@code tenterbook.sample.OutlineReport}.
 */
public final class ClothFinder {
    /** Another one where the same picture may give another outline. */
    public static final int VERSION = 1;

    /** Cells along the longer side, up to twice as many: half a cell off all around is an overlap of 0.98. */
    public static final int LONG_EDGE = 256;

    private static final double LEAST_SHARE = 0.03;
    private static final double LEAST_OVERLAP = 0.96;
    private static final double LEAST_CLEAR = 0.97;
    private static final double MOST_RAGGED = 1.3;
    private static final double LEAST_FILLED = 0.72;
    private static final double MOST_OTHER = 0.04;
    private static final double SMOOTHER = 3;
    /** From so much in common between frame and middle on, there is no backdrop; from the second on where no edge is found either. */
    private static final double VERY_ALIKE = 0.75;

    private static final double ALIKE = 0.6;
    /** Parts of the frame that surely show backdrop: at most so much where the cloth fills the picture, and too little to begin with. */
    private static final double FEW = 0.65;

    private static final double HARDLY_ANY = 0.12;
    /** How far from the edge to either side colours are compared, in cells. */
    private static final int RIM = 2;

    /** Euclidean distance in CIELAB that is seen as an edge. */
    private static final double VISIBLE = 6;

    /** A corner is left out where the outline then goes astray by no more, in cells. */
    private static final double STRAIGHT = 0.8;

    private final LabRaster raster;

    private ClothFinder(LabRaster raster) {
        this.raster = raster;
    }

    public static ClothOutline find(Pixels picture) {
        return find(LabRaster.of(picture, LONG_EDGE));
    }

    /** @param raster of about {@link #LONG_EDGE} cells */
    public static ClothOutline find(LabRaster raster) {
        return new ClothFinder(raster).outline();
    }

    private ClothOutline outline() {
        FrameColours frame = new FrameColours(raster);
        if (frame.alike() >= VERY_ALIKE) {
            return whole(frame);
        }
        boolean alike = frame.alike() >= ALIKE && frame.backdropShare() <= FEW;
        if (frame.backdropShare() < HARDLY_ANY) {
            return alike ? whole(frame) : none(Edge.NOTHING_STANDS_OUT, frame.backdropShare());
        }
        ClothOutline before = before(frame);
        return before.edge() != Edge.FOUND && alike ? whole(frame) : before;
    }

    private ClothOutline whole(FrameColours frame) {
        return new ClothOutline(Edge.FILLS_THE_PICTURE, Region.WHOLE.corners(), frame.alike());
    }

    private static ClothOutline none(Edge why, double measured) {
        return new ClothOutline(why, List.of(), measured);
    }

    /** The cloth before a backdrop, whose cells at the frame are known. */
    private ClothOutline before(FrameColours frame) {
        Cutting cutting = new Cutting(raster, frame.backdrop());
        CellShape cloth = cutting.cloth(1);
        if (cloth.share() < LEAST_SHARE || cloth.share() > 1 - LEAST_SHARE / 2) {
            return none(Edge.NOTHING_STANDS_OUT, cloth.share());
        }
        EdgePolygon edge = cloth.edge().simplified(STRAIGHT);
        EdgePolygon hull = edge.hull();
        double ragged = edge.length() / hull.length();
        if (ragged > MOST_RAGGED) {
            return none(Edge.RAGGED, ragged);
        }
        double filled = cloth.cells / hull.area();
        if (filled < LEAST_FILLED) {
            return none(Edge.IN_PIECES, filled);
        }
        double clear = clear(cloth);
        if (clear < LEAST_CLEAR) {
            return none(Edge.FAINT, clear);
        }
        double other = other(cloth, cutting, ColourMixture.of(raster, frame.backdrop(), 5));
        if (other > MOST_OTHER) {
            return none(Edge.OTHER_THINGS, other);
        }
        double steady = cloth.overlap(cutting.cloth(SMOOTHER));
        if (steady < LEAST_OVERLAP) {
            return none(Edge.UNSTEADY, steady);
        }
        return new ClothOutline(
                Edge.FOUND,
                edge.points().stream()
                        .map(p -> new Region.Corner(raster.across(p.x()), raster.down(p.y())))
                        .toList(),
                steady);
    }

    /** The part of the cloth's edge, off the frame, across which the colour changes visibly. */
    private double clear(CellShape cloth) {
        int all = 0;
        int clear = 0;
        for (int cell = 0; cell < raster.size(); cell++) {
            int x = cell % raster.width();
            int y = cell / raster.width();
            int right = (cloth.at(x - 1, y) ? 0 : 1) - (cloth.at(x + 1, y) ? 0 : 1);
            int down = (cloth.at(x, y - 1) ? 0 : 1) - (cloth.at(x, y + 1) ? 0 : 1);
            int inner = cell(x + RIM * right, y + RIM * down);
            int outer = cell(x - RIM * right, y - RIM * down);
            if (!cloth.inside[cell] || right == 0 && down == 0 || inner < 0 || outer < 0) {
                continue;
            }
            all++;
            double step = 0;
            for (int in = 0; in <= RIM; in++) {
                int at = cell(x + in * right, y + in * down);
                step = Math.max(step, raster.squared(at, raster.lightness(outer), raster.a(outer), raster.b(outer)));
            }
            clear += step > VISIBLE * VISIBLE ? 1 : 0;
        }
        return all == 0 ? 0 : (double) clear / all;
    }

    private int cell(int x, int y) {
        return x < 0 || y < 0 || x >= raster.width() || y >= raster.height() ? -1 : y * raster.width() + x;
    }

    /** The part of the picture that is neither cloth nor like what is at the frame. */
    private double other(CellShape cloth, Cutting cutting, ColourMixture backdrop) {
        int other = 0;
        for (int cell = 0; cell < raster.size(); cell++) {
            other += !cloth.inside[cell] && cutting.foreign(backdrop, cell, 1.5 * Cutting.FOREIGN) ? 1 : 0;
        }
        return (double) other / raster.size();
    }
}
