package tenterbook.colour.target;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.space.Lab;
import tenterbook.colour.target.EvenSquares.Square;

/**
 * Looks for a chart of 24 patches by its row of three or more neutrals, {@link EvenSquares}. From there the other squares are looked for on the chart's side of the row, and the corners follow from the largest rectangle of squares found.
 */
final class ChartFinder {
    private static final int FEWEST_NEUTRALS = 3;
    private static final int FEWEST_SQUARES = 12;
    /** Gap between two patches, in patches; as {@link ChartGrid} reads them. */
    private static final double GAP = 0.1;

    private final LabRaster raster;
    private final EvenSquares squares;

    /**
     * @param neutrals the row, from light to dark
     * @param outline the corners; null where too few other squares were found
     * @param squares how many of the 24 were found
     */
    record Seen(List<Square> neutrals, @Nullable CardOutline outline, int squares) {}

    private record Place(int column, int row) {}

    private ChartFinder(LabRaster raster, EvenSquares squares) {
        this.raster = raster;
        this.squares = squares;
    }

    static Optional<Seen> look(LabRaster raster) {
        EvenSquares squares = new EvenSquares(raster);
        List<Square> row = squares.neutrals();
        return row.size() < FEWEST_NEUTRALS
                ? Optional.empty()
                : Optional.of(new ChartFinder(raster, squares).chart(row));
    }

    private Seen chart(List<Square> row) {
        Map<Place, Square> lattice = lattice(row);
        int column = 0;
        double best = Double.NEGATIVE_INFINITY;
        for (int first = 0; first + row.size() <= ChartReference.COLUMNS; first++) {
            double fit = fit(lattice, first, row);
            if (fit > best) {
                best = fit;
                column = first;
            }
        }
        Map<Place, Square> placed = new HashMap<>();
        for (Map.Entry<Place, Square> each : lattice.entrySet()) {
            int across = each.getKey().column + column;
            if (across >= 0 && across < ChartReference.COLUMNS) {
                placed.put(new Place(across, each.getKey().row), each.getValue());
            }
        }
        return new Seen(row, placed.size() < FEWEST_SQUARES ? null : corners(placed), placed.size());
    }

    /** Squares by their place: columns along the row from its first, rows from the neutrals to the other side of the chart. */
    private Map<Place, Square> lattice(List<Square> row) {
        Map<Place, Square> lattice = new HashMap<>();
        for (int i = 0; i < row.size(); i++) {
            lattice.put(new Place(i, 0), row.get(i));
        }
        Square first = row.get(0);
        Square last = row.get(row.size() - 1);
        double dx = (last.x() - first.x()) / (row.size() - 1);
        double dy = (last.y() - first.y()) / (row.size() - 1);
        for (boolean more = true; more; ) {
            more = false;
            for (int down = 0; down < ChartReference.ROWS; down++) {
                for (int across = 1 - ChartReference.COLUMNS; across < ChartReference.COLUMNS; across++) {
                    Place place = new Place(across, down);
                    if (!lattice.containsKey(place)) {
                        Optional<Square> found = expected(lattice, place, dx, dy)
                                .flatMap(at -> squares.nearest(at[0], at[1], EvenSquares.ASTRAY * Math.hypot(dx, dy)))
                                .filter(square -> !lattice.containsValue(square));
                        found.ifPresent(square -> lattice.put(place, square));
                        more |= found.isPresent();
                    }
                }
            }
        }
        return lattice;
    }

    /** Where a square should lie by its neighbours: one step from one of them, as far as the two behind it are apart. */
    private static Optional<double[]> expected(Map<Place, Square> lattice, Place place, double dx, double dy) {
        int[][] steps = {{0, -1}, {-1, 0}, {1, 0}, {0, 1}};
        for (int[] step : steps) {
            Square beside = lattice.get(new Place(place.column + step[0], place.row + step[1]));
            if (beside != null) {
                Square behind = lattice.get(new Place(place.column + 2 * step[0], place.row + 2 * step[1]));
                // Rows go up from the neutrals where these go from left to right; on the screen y grows downwards.
                double x = -step[0] * dx - step[1] * dy;
                double y = -step[0] * dy + step[1] * dx;
                return Optional.of(
                        behind == null
                                ? new double[] {beside.x() + x, beside.y() + y}
                                : new double[] {2 * beside.x() - behind.x(), 2 * beside.y() - behind.y()});
            }
        }
        return Optional.empty();
    }

    /** How many squares lie on the chart where its row begins at this column; among equals, those nearer to its colours. */
    private static double fit(Map<Place, Square> lattice, int first, List<Square> row) {
        double a = row.stream().mapToDouble(each -> each.lab().a()).average().orElse(0);
        double b = row.stream().mapToDouble(each -> each.lab().b()).average().orElse(0);
        double fit = 0;
        for (Map.Entry<Place, Square> each : lattice.entrySet()) {
            int column = each.getKey().column + first;
            if (column >= 0 && column < ChartReference.COLUMNS) {
                int number = ChartReference.COLUMNS * (ChartReference.ROWS - 1 - each.getKey().row) + column;
                Lab known =
                        ChartReference.FROM_NOVEMBER_2014.patches().get(number).lab();
                Lab seen = each.getValue().lab();
                fit += 1 - Math.hypot(seen.a() - a - known.a(), seen.b() - b - known.b()) / 200;
            }
        }
        return fit;
    }

    private @Nullable CardOutline corners(Map<Place, Square> placed) {
        int most = 0;
        CardOutline outline = null;
        for (Place one : placed.keySet()) {
            for (Place other : placed.keySet()) {
                int area = (other.column - one.column) * (other.row - one.row);
                Square right = placed.get(new Place(other.column, one.row));
                Square up = placed.get(new Place(one.column, other.row));
                if (other.column > one.column && area > most && right != null && up != null) {
                    most = area;
                    outline = outline(one, other, List.of(up, placed.get(other), right, placed.get(one)));
                }
            }
        }
        return outline;
    }

    /** @param middles of the squares at the rectangle's corners: upper left, upper right, lower right, lower left */
    private @Nullable CardOutline outline(Place low, Place high, List<Square> middles) {
        Perspective perspective = Perspective.of(middles.stream()
                .map(each -> new Corner(raster.across(each.x()), raster.down(each.y())))
                .toList());
        double half = 0.5 / (1 + GAP);
        double wide = high.column - low.column;
        double tall = high.row - low.row;
        double left = (-half - low.column) / wide;
        double right = (ChartReference.COLUMNS - 1 + half - low.column) / wide;
        double top = (high.row - (ChartReference.ROWS - 1) - half) / tall;
        double bottom = (high.row + half) / tall;
        try {
            return new CardOutline(List.of(
                    perspective.at(left, top),
                    perspective.at(right, top),
                    perspective.at(right, bottom),
                    perspective.at(left, bottom)));
        } catch (CardRefused folded) {
            return null;
        }
    }
}
