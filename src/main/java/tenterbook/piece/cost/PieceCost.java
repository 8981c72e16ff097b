package tenterbook.piece.cost;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;

/**
 * What went into one piece.
 *
 * @param hours of work, as a duration
 * @param materials cloth, dyes and all else that was bought for it; null where not recorded
 */
public record PieceCost(Quantity hours, @Nullable Money materials) {
    public static final PieceCost NONE = new PieceCost(Quantity.UNRECORDED, null);

    public PieceCost {
        hours = hours == null ? Quantity.UNRECORDED : hours;
    }
}
