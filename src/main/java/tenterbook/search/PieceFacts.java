package tenterbook.search;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.measure.Digest;
import tenterbook.photo.Photo;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.Cut;

/**
 * A piece and everything its index entry is made from. What a record names and the ledger lacks is left out.
 *
 * @param examinations earliest first
 * @param given values of facets that another room finds
 * @param recorded when its first revision was written; null where that was not asked for, because it has a date of its own
 */
record PieceFacts(
        Piece piece,
        List<Clamping> clampings,
        Map<BoardId, BoardPair> boards,
        Map<ClothId, Cloth> cloths,
        Map<LotId, Lot> lots,
        Map<PartyId, Party> parties,
        Map<Digest, Photo> photos,
        List<Examination> examinations,
        List<OutsideFacets.Given> given,
        Instant recorded) {
    /** Board states used, each once, in order. */
    List<BoardUse> boardUses() {
        return clampings.stream()
                .flatMap(clamping -> clamping.boards().stream())
                .distinct()
                .toList();
    }

    String boardTitle(BoardId id) {
        return boards.containsKey(id) ? boards.get(id).title() : id.value();
    }

    Stream<Cloth> clothsUsed() {
        return clampings.stream()
                .flatMap(clamping -> clamping.cuts().stream())
                .map(Cut::cloth)
                .filter(Objects::nonNull)
                .distinct()
                .map(cloths::get)
                .filter(Objects::nonNull);
    }

    Stream<Lot> lotsUsed() {
        return clampings.stream()
                .flatMap(Clamping::lots)
                .filter(Objects::nonNull)
                .distinct()
                .map(lots::get)
                .filter(Objects::nonNull);
    }

    Stream<Lot> lotsUsed(Role role) {
        return lotsUsed().filter(lot -> lot.role() == role);
    }

    /** The latest examination. */
    Optional<Examination> examined() {
        return examinations.stream().max(Examination.IN_TIME);
    }

    Party holder() {
        return piece.holder() == null ? null : parties.get(piece.holder());
    }
}
