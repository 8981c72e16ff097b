package tenterbook.archive.act;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.cost.TaxWay;

/**
 * What a person says about an act.
 *
 * @param party who is concerned; null where not recorded or new
 * @param newPerson name of a person to be recorded with the act; empty for none
 * @param commission share of the price that the seller keeps, in percent
 * @param agreement whether a loan or consignment is also written as an agreement
 * @param unsure whether it is not certain that it happened so
 * @param taxWay how tax was charged with a sale; null where not recorded
 * @param taxRate its rate in percent
 * @param photos recorded already; each piece shows them from now on
 */
public record ActRequest(
        List<ActPiece> pieces,
        PartialDate when,
        PartialDate until,
        @Nullable PartyId party,
        String newPerson,
        String place,
        Quantity commission,
        boolean agreement,
        String note,
        boolean unsure,
        @Nullable TaxWay taxWay,
        Quantity taxRate,
        List<Digest> photos) {
    /** A piece, with what was paid, is asked or is agreed for it and the tax charged; null where not recorded. */
    public record ActPiece(
            PieceNumber piece,
            @Nullable Money price,
            @Nullable Money tax) {}

    public ActRequest {
        pieces = pieces == null ? List.of() : List.copyOf(pieces);
        when = when == null ? PartialDate.UNRECORDED : when;
        until = until == null ? PartialDate.UNRECORDED : until;
        newPerson = newPerson == null ? "" : newPerson.strip();
        place = place == null ? "" : place.strip();
        commission = commission == null ? Quantity.UNRECORDED : commission;
        taxRate = taxRate == null ? Quantity.UNRECORDED : taxRate;
        note = note == null ? "" : note.strip();
        photos = photos == null ? List.of() : List.copyOf(photos);
    }
}
