package tenterbook.piece;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.words.Refusal;

/**
 * Something that happened to a piece.
 *
 * @param party who was concerned, or null
 * @param until when a loan, consignment or show ends
 * @param price agreed, or null
 */
public record Event(
        EventKind kind,
        PartialDate when,
        PartialDate until,
        @Nullable PartyId party,
        @Nullable Money price,
        String note) {
    public Event {
        if (kind == null) {
            throw Refusal.of("piece.event-without-kind");
        }
        when = when == null ? PartialDate.UNRECORDED : when;
        until = until == null ? PartialDate.UNRECORDED : until;
        note = note == null ? "" : note.strip();
    }
}
