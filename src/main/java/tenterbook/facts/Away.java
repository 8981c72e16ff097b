package tenterbook.facts;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.history.Custody;

/**
 * A piece that is lent, consigned or reserved now.
 *
 * @param event that brought it there
 * @param until when that ends, from the event or else from the agreement with the same party
 * @param agreement with that party; null where none is recorded
 */
public record Away(
        Piece piece,
        Event event,
        PartialDate until,
        @Nullable Agreement agreement) {
    /** @param agreements that name the piece, in order of time */
    public static Optional<Away> of(Piece piece, List<Agreement> agreements) {
        Event event = Custody.of(piece.events()).decidedBy();
        if (event == null
                || event.kind() != EventKind.LENT
                        && event.kind() != EventKind.CONSIGNED
                        && event.kind() != EventKind.RESERVED) {
            return Optional.empty();
        }
        Agreement agreement = null;
        for (Agreement each : agreements) {
            if (event.kind() != EventKind.RESERVED
                    && event.party() != null
                    && event.party().equals(each.party())) {
                agreement = each;
            }
        }
        PartialDate until = event.until().recorded() || agreement == null ? event.until() : agreement.until();
        return Optional.of(new Away(piece, event, until, agreement));
    }

    /** The last day on which it may end; null where that is not known. */
    public @Nullable LocalDate end() {
        return until.to() == null ? until.from() : until.to();
    }

    public boolean overdue(LocalDate today) {
        LocalDate end = end();
        return end != null && end.isBefore(today);
    }
}
