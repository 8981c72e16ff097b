package tenterbook.piece;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * A photograph of a piece.
 *
 * @param photo digest of the original file
 * @param role null where not recorded
 * @param caption what it shows; also the text alternative
 * @param state which state of the piece it shows, from 1; 1 where the piece was never dyed again
 * @param regions colours named on it
 * @param layer number of the layer it shows, from 1 at the first board; null where it shows no single layer
 */
public record PiecePhoto(
        Digest photo,
        @Nullable PhotoRole role,
        String caption,
        int state,
        List<ColourRegion> regions,
        @Nullable Integer layer) {
    /** A photograph that shows no single layer. */
    public PiecePhoto(Digest photo, @Nullable PhotoRole role, String caption, int state, List<ColourRegion> regions) {
        this(photo, role, caption, state, regions, null);
    }

    public PiecePhoto {
        if (photo == null) {
            throw Refusal.of("piece.photograph-missing");
        }
        if (layer != null && (layer < 1 || layer > 1024)) {
            throw Refusal.of("piece.layer-number", "found", layer);
        }
        caption = caption == null ? "" : caption.strip();
        state = Math.max(1, state);
        regions = regions == null ? List.of() : List.copyOf(regions);
    }

    /** What it shows, as in 'front'; 'photograph' where not recorded. */
    public String shows() {
        return shown().onPaper();
    }

    /** The same for any reader. */
    public Written shown() {
        return role == null ? Message.of("form.photograph") : role;
    }

    public PiecePhoto withRegions(List<ColourRegion> others) {
        return new PiecePhoto(photo, role, caption, state, others, layer);
    }
}
