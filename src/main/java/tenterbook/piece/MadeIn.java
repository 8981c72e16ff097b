package tenterbook.piece;

import tenterbook.recipe.ClampingId;
import tenterbook.words.Refusal;

/**
 * One passage of a piece through a clamping. The first makes it; a later one opens a new state of the same piece.
 *
 * @param layers which layers of the stack the piece was; see {@link Layers}
 * @param note as in 'two more panels than layers'
 */
public record MadeIn(ClampingId clamping, Layers layers, String note) {
    public MadeIn {
        if (clamping == null) {
            throw Refusal.of("piece.clamping-missing");
        }
        layers = layers == null ? Layers.UNRECORDED : layers;
        note = note == null ? "" : note.strip();
    }
}
