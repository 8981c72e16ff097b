package tenterbook.label.document;

import java.util.List;
import java.util.Map;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;

/**
 * A document ready to be issued.
 *
 * @param pieces all that it speaks of, each in the version it was composed from
 * @param choices of the person who prints, by name, and what else is kept with the paper
 */
public record DocumentDraft(DocumentText text, List<Saved<Piece>> pieces, Map<String, String> choices) {
    public DocumentDraft {
        pieces = List.copyOf(pieces);
        choices = Map.copyOf(choices);
    }
}
