package tenterbook.search.index;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.facts.PieceColour;
import tenterbook.measure.Digest;
import tenterbook.piece.Category;
import tenterbook.piece.Status;

/**
 * What a list of pieces shows of one. Kept in the index, so that a page of results reads no ledger.
 *
 * @param number its first one
 * @param shown the number it has now
 * @param status null where not recorded, as is the category
 * @param size as in '180 cm × 45 cm'; empty where not recorded
 * @param dips as in '6–8'; empty where not known
 * @param year of finishing, or null
 * @param cloths titles, as in 'SH silk habotai'
 * @param faults kinds, each once
 * @param photo digest of the first front photograph, or of the first at all; null where there is none
 * @param caption of that photograph
 * @param band the piece's colours as named, else the palette of its photographs; those without a share first, then the greatest
 */
public record PieceCard(
        String number,
        String shown,
        String title,
        String otherTitle,
        @Nullable Status status,
        @Nullable Category category,
        String size,
        String dips,
        @Nullable Integer year,
        List<Board> boards,
        List<String> cloths,
        List<String> faults,
        @Nullable Digest photo,
        String caption,
        List<PieceColour> band) {
    /**
     * A board pair the piece was clamped between.
     *
     * @param title as in 'B02 Heron weir'
     * @param state as in 'II'; empty where nobody remembers
     */
    public record Board(String id, String title, String state) {
        public Board {
            state = state == null ? "" : state;
        }
    }

    public PieceCard {
        shown = shown == null ? number : shown;
        title = title == null ? "" : title;
        otherTitle = otherTitle == null ? "" : otherTitle;
        size = size == null ? "" : size;
        dips = dips == null ? "" : dips;
        boards = boards == null ? List.of() : List.copyOf(boards);
        cloths = cloths == null ? List.of() : List.copyOf(cloths);
        faults = faults == null ? List.of() : List.copyOf(faults);
        caption = caption == null ? "" : caption;
        band = band == null ? List.of() : List.copyOf(band);
    }
}
