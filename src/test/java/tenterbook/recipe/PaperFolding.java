package tenterbook.recipe;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Folds a sheet of unit squares by turning what lies beyond a crease half a turn about the crease, in space. Each panel is
 * a centre point and the signs of its three axes; nothing here knows of accordions' parity or of reversed lists.
 */
final class PaperFolding {
    private PaperFolding() {}

    /** A square panel: where its centre is now, and which way its own axes point. */
    private static final class Panel {
        final int row;
        final int column;
        final double[] at;
        final int[] axes = {1, 1, 1};

        Panel(int row, int column) {
            this.row = row;
            this.column = column;
            this.at = new double[] {row + 0.5, column + 0.5, 0};
        }
    }

    static List<LayerMap.Cell> fold(List<Fold> folds) {
        int[] size = {1, 1};
        for (Fold fold : folds) {
            size[fold.axis().ordinal()] *= fold.panels();
        }
        List<Panel> sheet = new ArrayList<>();
        for (int row = 0; row < size[0]; row++) {
            for (int column = 0; column < size[1]; column++) {
                sheet.add(new Panel(row, column));
            }
        }
        for (Fold fold : folds) {
            int axis = fold.axis().ordinal();
            double width = extent(sheet, axis) / fold.panels();
            switch (fold.style()) {
                case ACCORDION -> accordion(sheet, axis, width, fold.panels());
                case HALVING -> {
                    for (int left = fold.panels(); left > 1; left /= 2) {
                        turn(sheet, axis, extent(sheet, axis) / 2, true);
                    }
                }
                case ROLLED -> {
                    for (int crease = fold.panels() - 1; crease > 0; crease--) {
                        turn(sheet, axis, crease * width, true);
                    }
                }
            }
        }
        sheet.sort(Comparator.comparingDouble(panel -> panel.at[2]));
        List<LayerMap.Cell> cells = new ArrayList<>();
        for (Panel p : sheet) {
            cells.add(
                    new LayerMap.Cell(cells.size() + 1, p.row, p.column, p.axes[2] > 0, p.axes[0] < 0, p.axes[1] < 0));
        }
        return cells;
    }

    /** The free end is turned over, and back over at the first panel's other edge, and over again. */
    private static void accordion(List<Panel> sheet, int axis, double width, int panels) {
        for (int k = 1; k < panels; k++) {
            boolean beyond = k % 2 == 1;
            turn(sheet, axis, beyond ? width : 0, beyond);
        }
    }

    private static double extent(List<Panel> sheet, int axis) {
        return sheet.stream().mapToDouble(panel -> panel.at[axis]).max().orElseThrow() + 0.5;
    }

    /** Turns all that lies beyond (or before) the crease half a turn about it, up and over onto the rest. */
    private static void turn(List<Panel> sheet, int axis, double crease, boolean beyond) {
        double top = sheet.stream().mapToDouble(panel -> panel.at[2]).max().orElseThrow();
        for (Panel panel : sheet) {
            if (beyond ? panel.at[axis] > crease : panel.at[axis] < crease) {
                // Half a turn about a line half a layer above the highest: the plane of the crease once it lies flat.
                panel.at[axis] = 2 * crease - panel.at[axis];
                panel.at[2] = 2 * (top + 0.5) - panel.at[2];
                panel.axes[axis] *= -1;
                panel.axes[2] *= -1;
            }
        }
    }
}
