package tenterbook.documents.kind;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.facts.Denial;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.words.Message;

/**
 * A piece with all its facts for a document.
 *
 * @param newest the newest revision of its record
 * @param kin other pieces out of the same clampings
 */
record DocumentFacts(Saved<Piece> saved, PieceFacts facts, Revision newest, List<PieceNumber> kin) {
    static DocumentFacts of(Archive archive, Saved<Piece> saved) {
        Piece piece = saved.record();
        PieceFacts facts = PieceReader.of(archive, piece);
        List<PieceNumber> kin = facts.clampings().stream()
                .flatMap(clamping -> archive.piecesOf(clamping).stream())
                .filter(number -> !number.equals(piece.number()))
                .distinct()
                .toList();
        List<Revision> history =
                archive.ledger().history(Kinds.PIECE.key(piece.number().value()));
        return new DocumentFacts(saved, facts, history.get(history.size() - 1), kin);
    }

    Piece piece() {
        return saved.record();
    }

    PieceNumber number() {
        return piece().number();
    }

    /** The number it has now. */
    PieceNumber shown() {
        return piece().shown();
    }

    /** Its title; 'untitled' where it has none. */
    String title() {
        return piece().title().isEmpty() ? DocumentWords.words("document.untitled") : piece().title();
    }

    /** Its number and, where that is short enough for a running head, its title. */
    String running() {
        String whole = shown() + "  " + piece().title();
        return whole.length() <= 60 ? whole.strip() : shown().value();
    }

    /** @param buyers whether a buyer is named too; otherwise it is a private owner */
    String named(PartyId id, boolean buyers) {
        Party party = facts.party(id).orElse(null);
        boolean subject =
                party != null && !party.kind().toLowerCase(Locale.ROOT).contains("buyer");
        if (!subject && !buyers) {
            return DocumentWords.words("document.private-owner");
        }
        return party == null ? id.value() : party.title();
    }

    List<PiecePhoto> photos() {
        return facts.pictures();
    }

    Optional<Digest> photo() {
        return photos().stream().findFirst().map(PiecePhoto::photo);
    }

    String seen() {
        return photos().stream().findFirst().map(PiecePhoto::caption).orElse("");
    }

    /** The cloths and what else is on the piece, with their fibres, as in 'silk habotai (100 % silk); with hem tape (100 % cotton)'. */
    String materials() {
        String cloths = Denial.NO_CLOTH.unless(facts, () -> facts.cloth().inWords());
        String others = facts.besidesCloth();
        return others.isEmpty()
                ? cloths
                : Message.of("document.with-others", "cloths", cloths, "others", others)
                        .onPaper();
    }

    String maker() {
        return facts.origin().inFull();
    }

    /** As in 'Oficina Valderim, Porto Sarelho', for the foot of a page; empty where not recorded. */
    String house() {
        return facts.origin().house();
    }
}
