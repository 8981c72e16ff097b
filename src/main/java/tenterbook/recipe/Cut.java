package tenterbook.recipe;

import org.jspecify.annotations.Nullable;
import tenterbook.material.ClothId;
import tenterbook.measure.Quantity;

/**
 * A cut of cloth that went into a clamping.
 *
 * @param length along the warp, as a length
 * @param width across the cloth, as a length
 * @param weighed dry mass before the mordant bath, as weighed, of all cuts of this size together
 * @param count how many cuts of this size; not recorded counts as one
 */
public record Cut(@Nullable ClothId cloth, Quantity length, Quantity width, Quantity weighed, Quantity count) {
    public Cut {
        length = length == null ? Quantity.UNRECORDED : length;
        width = width == null ? Quantity.UNRECORDED : width;
        weighed = weighed == null ? Quantity.UNRECORDED : weighed;
        count = count == null ? Quantity.UNRECORDED : count;
    }
}
