package tenterbook.recipe;

import org.jspecify.annotations.Nullable;
import tenterbook.material.LotId;
import tenterbook.measure.Quantity;

/**
 * A substance put into a bath.
 *
 * @param lot null where not recorded
 * @param wof percent of the weight of fibre
 * @param weighed mass as weighed
 */
public record Charge(@Nullable LotId lot, Quantity wof, Quantity weighed) {
    public Charge {
        wof = wof == null ? Quantity.UNRECORDED : wof;
        weighed = weighed == null ? Quantity.UNRECORDED : weighed;
    }
}
