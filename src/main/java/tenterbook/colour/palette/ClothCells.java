package tenterbook.colour.palette;

import java.util.List;

/** Which cells of a picture show the cloth and nothing else, by its outline. */
final class ClothCells {
    private ClothCells() {}

    /**
     * Cells inside the outline that have no neighbour outside it; those at the edge of the picture have none there.
     *
     * @param leaveOut the card and whatever else lies on the cloth
     */
    static boolean[] within(LabRaster raster, Region outline, List<Region> leaveOut) {
        boolean[] inside = new boolean[raster.size()];
        for (int cell = 0; cell < inside.length; cell++) {
            double x = raster.across(cell % raster.width() + 0.5);
            double y = raster.down(cell / raster.width() + 0.5);
            inside[cell] = outline.contains(x, y) && leaveOut.stream().noneMatch(region -> region.contains(x, y));
        }
        boolean[] cells = new boolean[inside.length];
        for (int cell = 0; cell < cells.length; cell++) {
            cells[cell] = inside[cell];
            for (int next : beside(raster, cell)) {
                cells[cell] &= next < 0 || inside[next];
            }
        }
        return cells;
    }

    /** Left, right, above, below; -1 outside the picture. */
    static int[] beside(LabRaster raster, int cell) {
        int w = raster.width();
        int x = cell % w;
        return new int[] {
            x > 0 ? cell - 1 : -1,
            x < w - 1 ? cell + 1 : -1,
            cell >= w ? cell - w : -1,
            cell + w < raster.size() ? cell + w : -1
        };
    }
}
