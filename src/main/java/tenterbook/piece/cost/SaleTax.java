package tenterbook.piece.cost;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * The tax of a sale as it was charged, by what was recorded: no part of it is computed from another.
 *
 * @param way null where not recorded
 * @param rate in percent
 * @param amount exact to the currency's smallest unit; null where not recorded
 */
public record SaleTax(
        @Nullable TaxWay way, Quantity rate, @Nullable Money amount) {
    public static final SaleTax UNRECORDED = new SaleTax(null, Quantity.UNRECORDED, null);

    /** @throws Refusal where an amount or a rate contradicts the way, or none is named with them */
    public SaleTax {
        rate = rate == null ? Quantity.UNRECORDED : rate;
        boolean some = amount != null && amount.amount().signum() > 0 || rate.low() != null && rate.low() > 0;
        if (way == null && (amount != null || rate.recorded())) {
            throw Refusal.of("cost.tax-which-way");
        }
        if (way == TaxWay.NONE && some) {
            throw Refusal.of("cost.tax-none-and-some");
        }
    }

    /** @throws Refusal where the amount cannot be that of a sale at this price */
    public void fits(@Nullable Money price) {
        if (amount == null || price == null) {
            return;
        }
        if (!amount.currency().equals(price.currency())
                || way == TaxWay.INCLUDED && amount.amount().compareTo(price.amount()) > 0) {
            throw Refusal.of("cost.tax-not-of-price", "tax", amount, "price", price);
        }
    }

    public boolean recorded() {
        return way != null;
    }

    /** As in 'tax of 23 % included: 44.88 EUR'; only where it is recorded. */
    public Message words() {
        return Message.of(
                "cost.tax." + (way == null ? TaxWay.NONE : way).code(),
                "rated",
                rate.recorded(),
                "rate",
                QuantityWords.withAssumedUnit(rate),
                "known",
                amount != null,
                "amount",
                amount == null ? "" : amount);
    }
}
