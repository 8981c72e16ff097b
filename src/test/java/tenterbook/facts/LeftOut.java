package tenterbook.facts;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.recipe.dip.DipsNeeded;

/** Asks for the colour of each piece as if that piece were not in the archive, and keeps how far the answers were off. */
final class LeftOut {
    /** Ends of an interval are counted as no farther than this many dips, so that an open one has a width. */
    private static final double FARTHEST = 40;

    private final List<Double> factors = new ArrayList<>();
    private final List<Double> widths = new ArrayList<>();
    private int held;
    private int refused;

    void askEach(List<Dyed> pieces) {
        for (Dyed left : pieces) {
            List<Dyed> rest = new ArrayList<>(pieces);
            rest.remove(left);
            ask(rest, left);
        }
    }

    /** The colour of {@code piece}, whose true number of dips is known, by the evidence of {@code all}. */
    void ask(List<Dyed> all, Dyed piece) {
        DipsNeeded needed =
                DipQuestion.ask(all, piece.group(), piece.ground(), null).needed();
        if (needed == null) {
            refused++;
            return;
        }
        double truth = piece.dips().middle();
        double best = Math.min(FARTHEST, Math.max(0.1, needed.best()));
        double low = needed.plausible().low();
        double high = Math.min(FARTHEST, needed.plausible().high());
        factors.add(Math.max(best / truth, truth / best));
        widths.add(high - low);
        held += low <= truth && truth <= needed.plausible().high() ? 1 : 0;
    }

    /** The factor that nine in ten answers keep within. */
    double factorOfNineInTen() {
        return quantile(factors, 0.9);
    }

    double percentHeld() {
        return 100.0 * held / factors.size();
    }

    double medianWidth() {
        return quantile(widths, 0.5);
    }

    int answered() {
        return factors.size();
    }

    int refused() {
        return refused;
    }

    private static double quantile(List<Double> values, double share) {
        double[] sorted = values.stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(sorted);
        return sorted[(int) Math.ceil(share * sorted.length) - 1];
    }

    @Override
    public String toString() {
        return String.format(
                java.util.Locale.ROOT,
                "%d answered, %d refused, nine in ten within %.2f, %.1f %% held, median width %.2f dips",
                answered(),
                refused,
                factorOfNineInTen(),
                percentHeld(),
                medianWidth());
    }
}
