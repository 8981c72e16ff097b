package tenterbook.piece;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.piece.cost.SaleTax;
import tenterbook.words.Refusal;

/**
 * Something that happened to a piece.
 *
 * @param party who was concerned, or null
 * @param until when a loan, consignment or show ends
 * @param price agreed, or null
 * @param place where the piece was taken or shown; empty where not recorded
 * @param tax of a sale, as it was charged
 * @param unsure whether it is not certain that it happened so; such an event may stand where another would be refused
 */
public record Event(
        EventKind kind,
        PartialDate when,
        PartialDate until,
        @Nullable PartyId party,
        @Nullable Money price,
        String note,
        String place,
        boolean unsure,
        SaleTax tax) {
    /** An event without the tax of a sale. */
    public Event(
            EventKind kind,
            PartialDate when,
            PartialDate until,
            @Nullable PartyId party,
            @Nullable Money price,
            String note,
            String place,
            boolean unsure) {
        this(kind, when, until, party, price, note, place, unsure, SaleTax.UNRECORDED);
    }

    public Event {
        if (kind == null) {
            throw Refusal.of("piece.event-without-kind");
        }
        when = when == null ? PartialDate.UNRECORDED : when;
        until = until == null ? PartialDate.UNRECORDED : until;
        note = note == null ? "" : note.strip();
        place = place == null ? "" : place.strip();
        tax = tax == null ? SaleTax.UNRECORDED : tax;
        tax.fits(price);
    }

    /** An event of which nothing more is known. */
    public static Event of(EventKind kind, PartialDate when) {
        return new Event(kind, when, null, null, null, "", "", false);
    }
}
