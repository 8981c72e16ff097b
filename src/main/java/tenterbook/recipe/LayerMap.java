package tenterbook.recipe;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Where each panel of the unfolded cloth lies in the folded stack, and how it is turned there.
 *
 * <p>Computed by simulating the folds: a fold in {@code p} panels puts panel {@code k} of the present stack above panel {@code
 * k-1} and turns every second one over, which reverses the order of its layers and mirrors it along the folded side. Halving
 * folds the free half over the other; rolling puts the free end innermost.
 *
 * @param rows panels along the length
 * @param columns panels across the width
 * @param cells one for each panel, in order of layer
 */
public record LayerMap(int rows, int columns, List<Cell> cells) {
    /** More than any clamp holds; guards against a typing error. */
    public static final int MOST_LAYERS = 1024;

    /**
     * One panel.
     *
     * @param layer 1 for the layer at the first board, up to the number of layers
     * @param row from 0, along the length
     * @param column from 0, across the width
     * @param faceUp whether the cloth's face looks towards the last board
     * @param mirroredLength whether the image stands reversed along the length
     * @param mirroredWidth whether the image stands reversed across the width
     */
    public record Cell(int layer, int row, int column, boolean faceUp, boolean mirroredLength, boolean mirroredWidth) {}

    public LayerMap {
        cells = List.copyOf(cells);
    }

    public int layers() {
        return cells.size();
    }

    /** The stack after all folds; without folds, one layer. */
    public static LayerMap of(List<Fold> folds) {
        int rows = 1;
        int columns = 1;
        for (Fold fold : folds) {
            rows *= fold.axis() == Fold.Axis.LENGTH ? fold.panels() : 1;
            columns *= fold.axis() == Fold.Axis.WIDTH ? fold.panels() : 1;
        }
        List<Place> stacks = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                stacks.add(new Place(row, column, List.of(new Cell(0, row, column, true, false, false))));
            }
        }
        for (Fold fold : folds) {
            stacks = folded(stacks, fold);
        }
        List<Cell> order = stacks.get(0).stack;
        List<Cell> numbered = new ArrayList<>();
        for (int i = 0; i < order.size(); i++) {
            Cell c = order.get(i);
            numbered.add(new Cell(i + 1, c.row, c.column, c.faceUp, c.mirroredLength, c.mirroredWidth));
        }
        return new LayerMap(rows, columns, numbered);
    }

    /** A position counted in panels, and the panels stacked on it from bottom to top. */
    private record Place(int row, int column, List<Cell> stack) {}

    private static List<Place> folded(List<Place> places, Fold fold) {
        if (fold.style() == Fold.Style.HALVING) {
            List<Place> lying = places;
            for (int panels = fold.panels(); panels > 1; panels /= 2) {
                lying = pleated(lying, new Fold(fold.axis(), Fold.Style.ACCORDION, 2));
            }
            return lying;
        }
        return pleated(places, fold);
    }

    private static List<Place> pleated(List<Place> places, Fold fold) {
        boolean alongLength = fold.axis() == Fold.Axis.LENGTH;
        int span = 1
                + places.stream()
                        .mapToInt(p -> alongLength ? p.row : p.column)
                        .max()
                        .orElseThrow();
        int panel = span / fold.panels();
        List<Place> result = new ArrayList<>();
        for (Place base : places) {
            int at = alongLength ? base.row : base.column;
            if (at >= panel) {
                continue;
            }
            List<Cell> stack = new ArrayList<>();
            for (int k = 0; k < fold.panels(); k++) {
                int from = k % 2 == 0 ? k * panel + at : k * panel + (panel - 1 - at);
                Place source = places.stream()
                        .filter(p -> (alongLength ? p.row : p.column) == from
                                && (alongLength ? p.column == base.column : p.row == base.row))
                        .findFirst()
                        .orElseThrow();
                stack.addAll(k % 2 == 0 ? source.stack : turned(source.stack, alongLength));
            }
            result.add(new Place(base.row, base.column, stack));
        }
        if (fold.style() == Fold.Style.ROLLED) {
            // Each turn wraps round what is rolled already, so the last panel is innermost.
            result.replaceAll(p -> new Place(p.row, p.column, rolled(p.stack, fold.panels())));
        }
        return result;
    }

    private static List<Cell> turned(List<Cell> stack, boolean alongLength) {
        List<Cell> over = new ArrayList<>();
        for (int i = stack.size() - 1; i >= 0; i--) {
            Cell c = stack.get(i);
            over.add(new Cell(
                    0, c.row, c.column, !c.faceUp, alongLength != c.mirroredLength, alongLength == c.mirroredWidth));
        }
        return over;
    }

    /** Panels in the order a flat roll lays them: even ones below, the last in the middle, odd ones above. */
    private static List<Cell> rolled(List<Cell> pleated, int panels) {
        int each = pleated.size() / panels;
        List<Cell> order = new ArrayList<>();
        for (int k = 0; k < panels; k += 2) {
            order.addAll(pleated.subList(k * each, (k + 1) * each));
        }
        for (int k = panels % 2 == 0 ? panels - 1 : panels - 2; k > 0; k -= 2) {
            order.addAll(pleated.subList(k * each, (k + 1) * each));
        }
        return order;
    }

    /** The panels of the opened cloth, row by row. */
    public List<Cell> opened() {
        return cells.stream()
                .sorted(Comparator.comparingInt(Cell::row).thenComparingInt(Cell::column))
                .toList();
    }
}
