package tenterbook.colour.target;

import java.util.List;
import java.util.Optional;
import tenterbook.colour.palette.Pixels;

/** The patches of a chart in the picture, in the order of the reference. */
record ChartReading(List<CardReading> patches) {
    /** More than for a card, since patches are small. */
    private static final double MOST_UNEVEN = 0.25;

    static ChartReading of(Pixels picture, ChartGrid grid) {
        return new ChartReading(grid.patches().stream()
                .map(part -> CardReading.of(picture, part))
                .toList());
    }

    /**
     * Why patch {@code i} cannot be used, as a message key; empty if it can. A saturated patch at level 0 in one channel is
     * clipped.
     */
    Optional<String> fault(int i) {
        CardReading patch = patches.get(i);
        if (patch.tooBright() > CardReading.MOST_CLIPPED) {
            return Optional.of("card.patch.too-bright");
        }
        if (patch.tooDark() > CardReading.MOST_CLIPPED) {
            return Optional.of("card.patch.too-dark");
        }
        double dark = 0.02 / Math.max(0.02, patch.mean().luminance());
        return patch.unevenness() > MOST_UNEVEN + dark || patch.spread() > CardReading.MOST_SPREAD
                ? Optional.of("card.patch.uneven")
                : Optional.empty();
    }
}
