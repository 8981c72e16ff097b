package tenterbook.piece;

import java.util.List;
import tenterbook.measure.Digest;

/**
 * A photograph of a piece.
 *
 * @param photo digest of the original file
 * @param caption what is to be seen, also for someone who cannot see it
 * @param state which state of the piece it shows, from 1; 1 where the piece was never dyed again
 * @param regions colours named on it
 */
public record PiecePhoto(Digest photo, PhotoRole role, String caption, int state, List<ColourRegion> regions) {
    public PiecePhoto {
        role = role == null ? PhotoRole.OTHER : role;
        caption = caption == null ? "" : caption.strip();
        state = Math.max(1, state);
        regions = regions == null ? List.of() : List.copyOf(regions);
    }
}
