package tenterbook.documents;

import java.util.List;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;

/**
 * A document ready to be issued.
 *
 * @param pieces all its pieces, each in the version it was composed from
 */
public record DocumentDraft(
        DocumentText text, List<Saved<Piece>> pieces, DocumentSettings settings, DocumentOrigin origin) {
    public DocumentDraft {
        pieces = List.copyOf(pieces);
    }
}
