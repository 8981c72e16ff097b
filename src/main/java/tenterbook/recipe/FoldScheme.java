package tenterbook.recipe;

import java.util.List;
import java.util.stream.Collectors;
import tenterbook.measure.Quantity;

/**
 * How the cloth was folded to the board's repeat.
 *
 * @param folds in the order they were made; empty where only a count of layers is known
 * @param layersCounted layers as counted at the clamp, which wins over the computed number
 * @param note anything else, as in 'selvedge to the left, one end flipped'
 */
public record FoldScheme(List<Fold> folds, Quantity layersCounted, String note) {
    public static final FoldScheme UNRECORDED = new FoldScheme(List.of(), Quantity.UNRECORDED, "");

    public FoldScheme {
        folds = folds == null ? List.of() : List.copyOf(folds);
        layersCounted = layersCounted == null ? Quantity.UNRECORDED : layersCounted;
        note = note == null ? "" : note.strip();
        long layers = folds.stream().mapToLong(Fold::panels).reduce(1, (a, b) -> a * b);
        if (layers > LayerMap.MOST_LAYERS) {
            throw new IllegalArgumentException("These folds would make %d layers; a clamping holds at most %d"
                    .formatted(layers, LayerMap.MOST_LAYERS));
        }
    }

    /** The folds in words, as in 'accordion in 4 along the length, then halving in 2 across the width'. */
    public String inWords() {
        if (folds.isEmpty()) {
            return layersCounted.recorded() ? layersCounted + " layers" : "not recorded";
        }
        return folds.stream()
                .map(fold -> "%s in %d %s"
                        .formatted(
                                fold.style(),
                                fold.panels(),
                                fold.axis() == Fold.Axis.LENGTH ? "along the length" : "across the width"))
                .collect(Collectors.joining(", then "));
    }
}
