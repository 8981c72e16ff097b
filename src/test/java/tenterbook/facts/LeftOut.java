package tenterbook.facts;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.recipe.dip.DipsNeeded;

/** Asks for the colour of each piece as if that piece were not in the archive, and keeps how far the answers were off. */
final class LeftOut {
    /** Ends of an interval are counted as no farther than this many dips, so that an open one has a width. */
    private static final double FARTHEST = 40;

    /** Of all dips of a piece, those it has had and those still needed. */
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

    /** All that another was answered too. */
    void add(LeftOut other) {
        factors.addAll(other.factors);
        widths.addAll(other.widths);
        held += other.held;
        refused += other.refused;
    }

    private void ask(List<Dyed> all, Dyed piece) {
        keep(
                DipQuestion.ask(all, piece.group(), piece.ground(), null).needed(),
                piece.dips().middle(),
                0);
    }

    /** The dips that take a piece from one state to a later one, both of known dips; not asked where no deeper by its photograph. */
    void askFurther(List<Dyed> all, Dyed now, Dyed then) {
        if (then.ground().lightness() < now.ground().lightness()) {
            double had = now.dips().middle();
            keep(
                    DipQuestion.ask(all, now.group(), then.ground(), now).more(),
                    then.dips().middle() - had,
                    had);
        }
    }

    private void keep(@Nullable DipsNeeded needed, double truth, double had) {
        if (needed == null) {
            refused++;
            return;
        }
        double best = had + Math.min(FARTHEST, Math.max(0.1, needed.best()));
        double high = Math.min(FARTHEST, needed.plausible().high());
        factors.add(Math.max(best / (had + truth), (had + truth) / best));
        widths.add(high - needed.plausible().low());
        held += needed.plausible().holds(truth) ? 1 : 0;
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
