package tenterbook.piece.agreement;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.words.Refusal;

/**
 * Money that went between the maker and the other party, as recorded: nothing here is computed.
 *
 * @param amount with any value-added tax in it
 * @param tax the value-added tax in the amount; null where not recorded
 */
public record Payment(
        PaymentKind kind,
        PartialDate when,
        Money amount,
        @Nullable Money tax,
        String note) {
    public Payment {
        when = when == null ? PartialDate.UNRECORDED : when;
        note = note == null ? "" : note.strip();
        if (tax != null
                && (!tax.currency().equals(amount.currency()) || tax.amount().compareTo(amount.amount()) > 0)) {
            throw Refusal.of("agreement.tax-not-in-amount", "tax", tax, "amount", amount);
        }
    }
}
