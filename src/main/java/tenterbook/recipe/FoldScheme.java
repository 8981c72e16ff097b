package tenterbook.recipe;

import java.util.List;
import tenterbook.measure.Quantity;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * How the cloth was folded to the board's repeat.
 *
 * @param folds in the order they were made; empty where only a count of layers is known
 * @param layersCounted layers as counted at the clamp; preferred to the computed number
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
            throw Refusal.of("recipe.too-many-layers", "layers", layers, "most", LayerMap.MOST_LAYERS);
        }
    }

    /** The folds in words, as in 'accordion in 4 along the length, then halving in 2 across the width'. */
    public Written inWords() {
        if (folds.isEmpty()) {
            return layersCounted.recorded()
                    ? Message.of("recipe.layers", "count", layersCounted)
                    : Message.of("measure.not-recorded");
        }
        Written all = fold(folds.get(0));
        for (Fold fold : folds.subList(1, folds.size())) {
            all = Message.of("recipe.fold-then", "before", all, "fold", fold(fold));
        }
        return all;
    }

    private static Message fold(Fold fold) {
        return Message.of(
                "recipe.fold",
                "style",
                fold.style(),
                "panels",
                fold.panels(),
                "axis",
                fold.axis().toString());
    }
}
