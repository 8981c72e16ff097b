package tenterbook.label;

import java.util.List;
import java.util.Optional;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.label.rule.Component;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;
import tenterbook.recipe.Clamping;

/**
 * All that a label may speak of, gathered from the archive by the caller. Any list may be empty: not recorded.
 *
 * @param cloths the cloth in the piece, each with the part it makes
 * @param lots lots of dye, mordant and assistant that the clampings name
 * @param boards board pairs that the clampings name
 * @param clampings those the piece passed through, in order of time
 * @param palette measured colours, the largest share first
 */
public record LabelFacts(
        Studio studio,
        Piece piece,
        List<ClothPart> cloths,
        List<Lot> lots,
        List<BoardPair> boards,
        List<Clamping> clampings,
        List<PaletteColour> palette) {
    /**
     * A cloth and what it is in the piece.
     *
     * @param part as in 'panel' or 'lining'; empty where not said
     */
    public record ClothPart(Cloth cloth, String part) {
        public ClothPart {
            part = part == null ? "" : part.strip();
        }
    }

    public LabelFacts {
        studio = studio == null ? Studio.UNNAMED : studio;
        cloths = cloths == null ? List.of() : List.copyOf(cloths);
        lots = lots == null ? List.of() : List.copyOf(lots);
        boards = boards == null ? List.of() : List.copyOf(boards);
        clampings = clampings == null ? List.of() : List.copyOf(clampings);
        palette = palette == null ? List.of() : List.copyOf(palette);
    }

    /** The cloths as the rules see them; see {@link tenterbook.label.rule.FibreStatement#of}. */
    public List<Component> components() {
        return cloths.stream().map(c -> Component.of(c.part, c.cloth)).toList();
    }

    Optional<Lot> lot(LotId id) {
        return lots.stream().filter(lot -> lot.id().equals(id)).findFirst();
    }

    Optional<BoardPair> board(BoardId id) {
        return boards.stream().filter(board -> board.id().equals(id)).findFirst();
    }
}
