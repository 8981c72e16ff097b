package tenterbook.colour.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tenterbook.colour.Lab;
import tenterbook.colour.LinearRgb;
import tenterbook.colour.Pixels;

/**
 * A correction found from a chart of 24 patches.
 *
 * @param correction a full 3 × 3 matrix; its likely error is the mean hold-out error joined with the light's unevenness
 * @param outline the chart, begun at the patch of dark skin
 * @param used how many patches were used; clipped and uneven ones are left out
 * @param holdOut mean ΔE00 of the used patches, each under the matrix found without it
 * @param worst the largest of these
 * @param faults the patches left out, each with its reason
 */
public record ChartCorrection(
        Correction correction, ChartGrid grid, int used, double holdOut, double worst, List<String> faults) {
    static final int FEWEST_PATCHES = 18;
    /** Above this the chart is not where it is said to be, not this chart, or the file has a strong tone of its own. */
    static final double MOST_HOLD_OUT = 5;

    public ChartCorrection {
        faults = List.copyOf(faults);
    }

    /**
     * Reads the chart at its four outer corners, whichever of them is named first, and fits the matrix.
     *
     * @throws CardRefused if fewer than 18 patches can be used, or the mean hold-out error is above ΔE00 5
     */
    public static ChartCorrection of(Pixels picture, CardOutline outline, ChartReference reference) {
        ChartCorrection best = null;
        CardRefused refused = null;
        for (ChartGrid grid : ChartGrid.turned(outline)) {
            try {
                ChartCorrection found = of(picture, grid, reference);
                best = best == null || found.holdOut < best.holdOut ? found : best;
            } catch (CardRefused e) {
                refused = refused == null ? e : refused;
            }
        }
        if (best == null) {
            throw refused;
        }
        if (best.holdOut > MOST_HOLD_OUT) {
            throw new CardRefused(String.format(
                    Locale.ROOT,
                    "The chart was not used: each patch, judged by the others, is off by ΔE00 %.1f on average; at most %.0f "
                            + "was expected. Check that the four corners are those of the outer patches, that it is the %s, "
                            + "and that the photograph has no filter.",
                    best.holdOut,
                    MOST_HOLD_OUT,
                    reference));
        }
        return best;
    }

    private static ChartCorrection of(Pixels picture, ChartGrid grid, ChartReference reference) {
        ChartReading reading = ChartReading.of(picture, grid);
        List<LinearRgb> seen = new ArrayList<>();
        List<Lab> known = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        double uneven = 0;
        for (ChartReference.Patch patch : reference.patches()) {
            int i = patch.number() - 1;
            CardReading read = reading.patches().get(i);
            reading.fault(i)
                    .ifPresentOrElse(
                            fault ->
                                    faults.add("Patch " + patch.number() + " (" + patch.name() + ") is " + fault + "."),
                            () -> {
                                seen.add(read.mean());
                                known.add(patch.lab());
                            });
            uneven += Correction.cardError(read, new KnownCard(patch.name(), patch.lab())) / ChartReference.PATCHES;
        }
        if (seen.size() < FEWEST_PATCHES) {
            throw new CardRefused("The chart was not used: " + FEWEST_PATCHES + " good patches or more are needed, "
                    + seen.size() + " were found. " + String.join(" ", faults)
                    + " Photograph the chart again in even light, a little darker or lighter.");
        }
        ChartFit fit = fit(seen, known);
        double likely = Math.hypot(fit.meanHoldOut(), uneven);
        Correction correction = new Correction(
                Calibration.CHART, fit.matrix().rows(), Correction.NONE.offset(), likely, String.join(" ", faults));
        return new ChartCorrection(correction, grid, seen.size(), fit.meanHoldOut(), fit.worstHoldOut(), faults);
    }

    private static ChartFit fit(List<LinearRgb> seen, List<Lab> known) {
        try {
            return ChartFit.of(seen, known);
        } catch (ArithmeticException e) {
            throw new CardRefused(
                    "The chart was not used: its patches do not differ in colour. Mark the chart itself.");
        }
    }
}
