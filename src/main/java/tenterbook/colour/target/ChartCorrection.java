package tenterbook.colour.target;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Threshold;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A correction found from a chart of 24 patches.
 *
 * @param correction a full 3 × 3 matrix after a tone; its two errors are the greater of the method's and its own hold-out errors,
 *     combined with the light's unevenness
 * @param outline the chart, begun at the patch of dark skin
 * @param used how many patches were used; clipped and uneven ones are left out
 * @param holdOut mean ΔE00 of the used patches, each under the fit without it
 * @param worst the largest of these
 * @param faults the patches left out, each with its reason
 */
public record ChartCorrection(
        Correction correction, ChartGrid grid, int used, double holdOut, double worst, List<Message> faults) {
    static final int FEWEST_PATCHES = (int) Threshold.number("chart-patches");
    /** Above this the outline is wrong, the chart is another one, or the file has a strong tone curve. */
    static final double MOST_HOLD_OUT = Threshold.number("chart-hold-out");

    public ChartCorrection {
        faults = List.copyOf(faults);
    }

    /**
     * Reads the chart at its four outer corners, in any rotation, and fits the matrix.
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
            throw new CardRefused(Message.of(
                    "card.chart-off",
                    "found",
                    NumberWords.decimals(best.holdOut, 1),
                    "most",
                    NumberWords.decimals(MOST_HOLD_OUT, 0),
                    "chart",
                    reference));
        }
        return best;
    }

    private static ChartCorrection of(Pixels picture, ChartGrid grid, ChartReference reference) {
        ChartReading reading = ChartReading.of(picture, grid);
        List<LinearRgb> seen = new ArrayList<>();
        List<Lab> known = new ArrayList<>();
        List<Message> faults = new ArrayList<>();
        double uneven = 0;
        for (ChartReference.Patch patch : reference.patches()) {
            int i = patch.number() - 1;
            CardReading read = reading.patches().get(i);
            reading.fault(i)
                    .ifPresentOrElse(
                            fault -> faults.add(Message.of(fault, "number", patch.number(), "name", patch.name())),
                            () -> {
                                seen.add(read.mean());
                                known.add(patch.lab());
                            });
            uneven += Correction.cardError(read, new KnownCard(patch.name(), patch.lab())) / ChartReference.PATCHES;
        }
        if (seen.size() < FEWEST_PATCHES) {
            throw new CardRefused(Message.of(
                    "card.too-few-patches", "least", FEWEST_PATCHES, "found", seen.size(), "faults", together(faults)));
        }
        ChartFit fit = fit(seen, known);
        StatedError stated = StatedError.of(Calibration.CHART);
        Correction correction = new Correction(
                Calibration.CHART,
                fit.matrix().rows(),
                Correction.NONE.offset(),
                fit.tone(),
                Math.hypot(Math.max(stated.nineInTen(), fit.holdOut(0.9)), uneven),
                Math.hypot(Math.max(stated.half(), fit.holdOut(0.5)), uneven),
                together(faults).inEnglish());
        return new ChartCorrection(correction, grid, seen.size(), fit.meanHoldOut(), fit.worstHoldOut(), faults);
    }

    private static Written together(List<Message> sentences) {
        return conventions ->
                sentences.stream().map(each -> each.in(conventions)).collect(Collectors.joining(" "));
    }

    private static ChartFit fit(List<LinearRgb> seen, List<Lab> known) {
        try {
            return ChartFit.of(seen, known);
        } catch (ArithmeticException e) {
            throw new CardRefused(Message.of("card.chart-of-one-colour"));
        }
    }
}
