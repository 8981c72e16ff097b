package tenterbook.documents;

import java.util.List;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.words.Written;

/**
 * A document ready to be issued.
 *
 * @param pieces all its pieces, each in the version it was composed from
 * @param lacking what must be known before it may be issued; empty where nothing is missing
 */
public record DocumentDraft(
        DocumentText text,
        List<Saved<Piece>> pieces,
        DocumentSettings settings,
        DocumentOrigin origin,
        List<Written> lacking) {
    public DocumentDraft {
        pieces = List.copyOf(pieces);
        lacking = List.copyOf(lacking);
    }

    /** One that lacks nothing. */
    public DocumentDraft(
            DocumentText text, List<Saved<Piece>> pieces, DocumentSettings settings, DocumentOrigin origin) {
        this(text, pieces, settings, origin, List.of());
    }
}
