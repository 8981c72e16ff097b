package tenterbook.piece;

import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;

/**
 * Something that happened to a piece.
 *
 * @param party who was concerned, or null
 * @param until when a loan, consignment or show ends
 * @param price agreed, or null
 */
public record Event(EventKind kind, PartialDate when, PartialDate until, PartyId party, Money price, String note) {
    public Event {
        kind = kind == null ? EventKind.OTHER : kind;
        when = when == null ? PartialDate.UNRECORDED : when;
        until = until == null ? PartialDate.UNRECORDED : until;
        note = note == null ? "" : note.strip();
    }
}
