package tenterbook.colour.target;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.space.Lab;

/**
 * The even squares of a picture, and rows of neutrals among them: squares of one size in a line, each clearly darker than the one
 * before and with an edge between them, so that light falling off over one ground is no row.
 */
final class EvenSquares {
    private static final int FEWEST_CELLS = 60;
    private static final double MOST_AREA = 0.045;
    private static final double LEAST_FILL = 0.8;
    private static final double LONGEST = 1.6;

    /** Greatest chroma of a neutral patch under coloured light, and of a step between two of them. */
    private static final double MOST_CHROMA = 22;

    private static final double MOST_COLOUR_STEP = 12;
    /** The neutrals of the classic chart lie 14 or more apart in L; a dark or bright photograph brings them nearer. */
    private static final double LEAST_FALL = 5;

    private static final double LEAST_EDGE = 4;
    private static final double SAME_SIZE = 1.35;
    private static final double NEAREST = 1.0;
    private static final double FARTHEST = 1.7;
    /** How far from its expected place a square may lie, in steps from patch to patch. */
    static final double ASTRAY = 0.35;

    private final LabRaster raster;
    private final List<Square> squares = new ArrayList<>();

    /** An even square: its middle and its side in cells of the raster, and its colour. */
    record Square(double x, double y, double side, Lab lab) {
        double chroma() {
            return Math.hypot(lab.a(), lab.b());
        }

        double to(double otherX, double otherY) {
            return Math.hypot(x - otherX, y - otherY);
        }
    }

    EvenSquares(LabRaster raster) {
        this.raster = raster;
        for (EvenParts.EvenPatch part :
                EvenParts.ofAnyColour(raster).grow(FEWEST_CELLS, (int) (MOST_AREA * raster.size()))) {
            Optional<double[][]> quad = QuadFit.around(CardFinder.cellCorners(raster, part.cells()));
            if (quad.isPresent()
                    && part.cells().length / QuadFit.area(quad.get()) >= LEAST_FILL
                    && CardFinder.lengthening(quad.get()) <= LONGEST
                    && CardFinder.cornered(quad.get())) {
                double[][] q = quad.get();
                squares.add(new Square(
                        (q[0][0] + q[1][0] + q[2][0] + q[3][0]) / 4,
                        (q[0][1] + q[1][1] + q[2][1] + q[3][1]) / 4,
                        Math.sqrt(part.cells().length),
                        new Lab(part.lightness(), part.a(), part.b())));
            }
        }
    }

    /** The longest row of neutrals, from light to dark; of one square or none where there is no row. */
    List<Square> neutrals() {
        List<Square> row = List.of();
        for (Square lightest : squares) {
            for (Square next : squares) {
                List<Square> found = row(lightest, next);
                row = found.size() > row.size() ? found : row;
            }
        }
        return row;
    }

    /** The longest row that begins with these two; shorter than two where they do not follow each other. */
    private List<Square> row(Square lightest, Square next) {
        List<Square> row = new ArrayList<>(List.of(lightest));
        double x = next.x;
        double y = next.y;
        while (row.size() < ChartReference.COLUMNS) {
            Square last = row.get(row.size() - 1);
            Optional<Square> following = nearest(x, y, ASTRAY * last.side).filter(each -> follows(last, each));
            if (following.isEmpty()) {
                break;
            }
            row.add(following.get());
            x = 2 * following.get().x - last.x;
            y = 2 * following.get().y - last.y;
        }
        return row;
    }

    private boolean follows(Square lighter, Square darker) {
        double side = (lighter.side + darker.side) / 2;
        double apart = lighter.to(darker.x, darker.y) / side;
        double fall = lighter.lab.lightness() - darker.lab.lightness();
        return fall >= LEAST_FALL
                && lighter.chroma() < MOST_CHROMA
                && darker.chroma() < MOST_CHROMA
                && Math.hypot(lighter.lab.a() - darker.lab.a(), lighter.lab.b() - darker.lab.b()) < MOST_COLOUR_STEP
                && apart >= NEAREST
                && apart <= FARTHEST
                && Math.max(lighter.side, darker.side) <= SAME_SIZE * Math.min(lighter.side, darker.side)
                && edge(lighter, darker) >= Math.max(LEAST_EDGE, fall / 2);
    }

    /** The greatest change of L over three cells on the way from one middle to the other. */
    private double edge(Square one, Square other) {
        int steps = (int) Math.ceil(one.to(other.x, other.y));
        double[] light = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            int x = (int) (one.x + (other.x - one.x) * i / steps);
            int y = (int) (one.y + (other.y - one.y) * i / steps);
            light[i] = raster.lightness(
                    Math.min(raster.height() - 1, y) * raster.width() + Math.min(raster.width() - 1, x));
        }
        double most = 0;
        for (int i = 3; i <= steps; i++) {
            most = Math.max(most, Math.abs(light[i] - light[i - 3]));
        }
        return most;
    }

    /** The square whose middle lies nearest to a place, closer than so many cells. */
    Optional<Square> nearest(double x, double y, double within) {
        return squares.stream()
                .filter(each -> each.to(x, y) < within)
                .min(Comparator.comparingDouble(each -> each.to(x, y)));
    }
}
