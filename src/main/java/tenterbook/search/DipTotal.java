package tenterbook.search;

import java.util.List;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.DipSeries;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;

/**
 * All dips of a piece, over every dip series it passed through.
 *
 * @param low at least so many; NaN where nothing is known
 * @param high at most so many; infinite where a series is there and its count is not known
 */
record DipTotal(double low, double high) {
    static DipTotal of(List<Clamping> clampings) {
        double low = 0;
        double high = 0;
        boolean known = false;
        for (Clamping clamping : clampings) {
            for (Step step : clamping.steps()) {
                DipSeries series = step.dips();
                if (step.kind() != StepKind.DIPS && !series.recorded()) {
                    continue;
                }
                Quantity count = series.count();
                if (count.known()) {
                    low += count.low() == null ? 0 : count.low();
                    high += count.high() == null ? Double.POSITIVE_INFINITY : count.high();
                    known = true;
                } else if (!series.dips().isEmpty()) {
                    low += series.dips().size();
                    high += series.dips().size();
                    known = true;
                } else {
                    high = Double.POSITIVE_INFINITY;
                }
            }
        }
        return known ? new DipTotal(low, high) : new DipTotal(Double.NaN, Double.NaN);
    }

    /** As in '6–8' or 'at least 3'; empty where nothing is known. */
    String text() {
        if (Double.isNaN(low)) {
            return "";
        }
        if (Double.isInfinite(high)) {
            return "at least " + QuantityWords.number(low);
        }
        return low == high ? QuantityWords.number(low) : QuantityWords.number(low) + "–" + QuantityWords.number(high);
    }
}
