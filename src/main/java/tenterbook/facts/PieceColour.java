package tenterbook.facts;

import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.ColourWords;
import tenterbook.colour.space.Lab;
import tenterbook.measure.NumberWords;
import tenterbook.piece.ColourRole;
import tenterbook.words.Refusal;

/**
 * A colour of a piece, its share and its name, as searches, labels, documents and pages pass it on.
 *
 * @param colour CIELAB, D65, 2° observer
 * @param share of the piece's area, 0 to 1; null where not measured
 * @param name the maker's own; empty where nobody named it
 * @param role which part of the dyeing it belongs to; null for a colour of a photograph's palette and on issued paper, which
 *     does not keep it
 */
public record PieceColour(
        Lab colour,
        @Nullable Double share,
        String name,
        @Nullable ColourRole role) {
    /** A colour that belongs to no known part. */
    public PieceColour(Lab colour, @Nullable Double share, String name) {
        this(colour, share, name, null);
    }

    public PieceColour {
        name = name == null ? "" : name.strip();
        if (share != null && !(share >= 0 && share <= 1)) {
            throw Refusal.of("piece.share-range", "found", NumberWords.plain(share));
        }
    }

    /** The maker's name, else plain words for the colour. */
    public String called() {
        return name.isEmpty() ? ColourWords.of(colour) : name;
    }
}
