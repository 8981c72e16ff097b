package tenterbook.piece.cost;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;

/**
 * How a studio makes a price of a cost.
 *
 * @param hourlyRate for an hour of work; null where not recorded
 * @param markup added to the cost, in percent of it
 * @param commission that a seller usually keeps, in percent of the price
 */
public record Pricing(@Nullable Money hourlyRate, Quantity markup, Quantity commission) {
    public static final Pricing NONE = new Pricing(null, Quantity.UNRECORDED, Quantity.UNRECORDED);

    public Pricing {
        markup = markup == null ? Quantity.UNRECORDED : markup;
        commission = commission == null ? Quantity.UNRECORDED : commission;
    }
}
