package tenterbook.colour.target;

import java.util.ArrayList;
import java.util.List;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;

/**
 * Where the 24 patches of a chart lie in the picture, from the four outer corners of its field of patches. Perspective is
 * respected. Gaps between patches are assumed to be a tenth of a patch, and only the middle half of each patch is read, so that
 * corners may be a few pixels off.
 *
 * @param patches the middle of each patch, in the order of {@link ChartReference#patches()}
 */
public record ChartGrid(List<Region> patches) {
    private static final double GAP = 0.1;
    private static final double HALF_READ = 0.25;

    public ChartGrid {
        patches = List.copyOf(patches);
    }

    /** @param corners of the field of patches, clockwise from the patch of dark skin */
    public static ChartGrid fromCorners(CardOutline corners) {
        Perspective perspective = Perspective.of(corners.corners());
        double across = ChartReference.COLUMNS + (ChartReference.COLUMNS - 1) * GAP;
        double down = ChartReference.ROWS + (ChartReference.ROWS - 1) * GAP;
        List<Region> patches = new ArrayList<>();
        for (int row = 0; row < ChartReference.ROWS; row++) {
            for (int column = 0; column < ChartReference.COLUMNS; column++) {
                double x = column * (1 + GAP) + 0.5;
                double y = row * (1 + GAP) + 0.5;
                patches.add(new Region(List.of(
                        perspective.at((x - HALF_READ) / across, (y - HALF_READ) / down),
                        perspective.at((x + HALF_READ) / across, (y - HALF_READ) / down),
                        perspective.at((x + HALF_READ) / across, (y + HALF_READ) / down),
                        perspective.at((x - HALF_READ) / across, (y + HALF_READ) / down))));
            }
        }
        return new ChartGrid(patches);
    }

    /** The chart read from each of its four corners in either direction, since it may lie on its side or upside down. */
    static List<ChartGrid> turned(CardOutline outline) {
        List<Corner> clockwise = outline.clockwise();
        List<ChartGrid> grids = new ArrayList<>();
        for (int first = 0; first < 4; first++) {
            List<Corner> corners = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                corners.add(clockwise.get((first + i) % 4));
            }
            grids.add(fromCorners(new CardOutline(corners)));
        }
        return grids;
    }
}
