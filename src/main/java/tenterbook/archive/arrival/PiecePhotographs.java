package tenterbook.archive.arrival;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Photographs, already recorded, that a piece is to show.
 *
 * @param role what they show; null for the usual one: the front for the first photograph of a piece, a detail for the others
 * @param state of the piece that they show; null for the last
 */
public record PiecePhotographs(
        List<Digest> photos,
        @Nullable PhotoRole role,
        String caption,
        @Nullable Integer state) {
    public PiecePhotographs {
        photos = List.copyOf(photos);
    }

    /** Of the usual role, without a caption. */
    public static PiecePhotographs of(List<Digest> photos) {
        return new PiecePhotographs(photos, null, "", null);
    }

    /**
     * Adds them to the piece as it is when that is written, so that somebody who saves it in the same moment loses nothing.
     *
     * @throws Refusal where the piece was withdrawn meanwhile
     */
    public Saved<Piece> add(LedgerTransaction ledger, PieceNumber number) {
        Saved<Piece> now = ledger.saved(Kinds.PIECE, number.value())
                .orElseThrow(() -> Refusal.of("act.no-such-piece", "number", number));
        String note = Message.of("api.photographs-added").inEnglish();
        return add(ledger, now, piece -> piece, note);
    }

    /** @param more what else is made of the piece in the same revision */
    public Saved<Piece> add(LedgerTransaction ledger, Saved<Piece> now, UnaryOperator<Piece> more, String note) {
        return ledger.save(Kinds.PIECE, more.apply(on(now.record())), now.version(), note);
    }

    /** The piece with them; one that it has already is not added again. */
    public Piece on(Piece piece) {
        List<PiecePhoto> all = new ArrayList<>(piece.photos());
        for (Digest photo : photos) {
            if (all.stream().noneMatch(each -> each.photo().equals(photo))) {
                PhotoRole usual = all.isEmpty() ? PhotoRole.FRONT : PhotoRole.DETAIL;
                all.add(new PiecePhoto(
                        photo, role == null ? usual : role, caption, state == null ? piece.state() : state, List.of()));
            }
        }
        return piece.withPhotos(all);
    }
}
