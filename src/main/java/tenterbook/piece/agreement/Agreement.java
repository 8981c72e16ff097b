package tenterbook.piece.agreement;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;

/**
 * A loan or a consignment.
 *
 * @param party borrower or seller; null where not recorded
 * @param purpose what it is for, as in the title of an exhibition
 * @param agreed the day it was agreed
 * @param from when it begins
 * @param until when it ends
 * @param payments what was paid and refunded, as recorded
 * @param insurer who insures, and from where to where
 * @param commission share of the price that the seller keeps, in percent
 * @param creditLine as the other party shows it
 * @param terms in the maker's words; an empty line parts paragraphs
 */
public record Agreement(
        AgreementId id,
        AgreementKind kind,
        @Nullable PartyId party,
        String purpose,
        PartialDate agreed,
        PartialDate from,
        PartialDate until,
        List<AgreedPiece> pieces,
        List<Payment> payments,
        String insurer,
        Quantity commission,
        String creditLine,
        String terms,
        String notes) {
    /** By their beginning, those without one first. */
    public static final Comparator<Agreement> IN_TIME = Comparator.comparing(
                    (Agreement agreement) -> agreement.from().from(), Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(agreement -> agreement.id().value());

    public Agreement {
        purpose = purpose == null ? "" : purpose.strip();
        agreed = agreed == null ? PartialDate.UNRECORDED : agreed;
        from = from == null ? PartialDate.UNRECORDED : from;
        until = until == null ? PartialDate.UNRECORDED : until;
        pieces = pieces == null ? List.of() : List.copyOf(pieces);
        payments = payments == null ? List.of() : List.copyOf(payments);
        insurer = insurer == null ? "" : insurer.strip();
        commission = commission == null ? Quantity.UNRECORDED : commission;
        creditLine = creditLine == null ? "" : creditLine.strip();
        terms = terms == null ? "" : terms.strip();
        notes = notes == null ? "" : notes.strip();
    }

    public Optional<AgreedPiece> piece(PieceNumber number) {
        return pieces.stream().filter(each -> each.piece().equals(number)).findFirst();
    }

    /** As in 'A24-001 Cloth and water'. */
    public String title() {
        return purpose.isEmpty() ? id.value() : id.value() + " " + purpose;
    }
}
