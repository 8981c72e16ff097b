package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Whether an interval called 95 % holds the truth about that often. Fixed seeds; 600 invented studios of each kind. */
class CoverageTest {
    private static final int STUDIOS = 600;

    private final Map<String, Integer> held = new LinkedHashMap<>();
    private int fitted;

    private void tally(String name, boolean holds) {
        held.merge(name, holds ? 1 : 0, Integer::sum);
    }

    private void run(DipCurve truth, int[] dips, double scatter) {
        for (int seed = 0; seed < STUDIOS; seed++) {
            SplittableRandom random = new SplittableRandom(1000 + seed);
            var finding = DipFit.of(Vats.points(truth, dips, scatter, random));
            if (finding.value().isEmpty()) {
                continue;
            }
            FittedDips fit = finding.value().orElseThrow();
            fitted++;
            tally("c", fit.base().holds(truth.base()));
            tally("A", fit.rise().holds(truth.rise()));
            tally("b", fit.rate().holds(truth.rate()));
            tally("limit", fit.limit().holds(truth.limit()));
            tally("curve at 5", fit.curveAt(5).plausible().holds(truth.at(5)));
            tally("curve at 15", fit.curveAt(15).plausible().holds(truth.at(15)));
            double piece = Math.max(0, truth.at(7) + scatter * random.nextGaussian());
            tally("piece at 7", fit.pieceAt(7).plausible().holds(piece));
        }
    }

    private void eachHeld(double least, double most) {
        held.forEach((name, count) -> assertThat(100.0 * count / fitted)
                .as("%s: percent held of %d", name, fitted)
                .isBetween(least, most));
    }

    @Test
    void intervalsHoldTheTruthForEightPieces() {
        run(Vats.REFERENCE, Vats.DIPS, 0.4);
        assertThat(fitted).isGreaterThan(STUDIOS * 99 / 100);
        eachHeld(90, 97);
    }

    /** No curve goes below base 0, which cuts one tail of the base: its truth is then held by 97.5 %, give or take. */
    private void baseHeldBy97AndAHalfPercent() {
        assertThat(100.0 * held.remove("c") / fitted).isBetween(95.0, 99.0);
    }

    @Test
    void intervalsHoldTheTruthForTwelvePiecesOfAShallowerVat() {
        run(new DipCurve(0.06, 12, 0.10), new int[] {0, 1, 2, 3, 4, 6, 6, 8, 9, 10, 12, 12}, 0.25);
        assertThat(fitted).isGreaterThan(STUDIOS * 95 / 100);
        baseHeldBy97AndAHalfPercent();
        eachHeld(90, 97);
    }

    @Test
    void intervalsHoldTheTruthForFiveScatteredPieces() {
        run(Vats.REFERENCE, new int[] {1, 2, 4, 8, 12}, 0.4);
        assertThat(fitted).isGreaterThan(STUDIOS * 95 / 100);
        baseHeldBy97AndAHalfPercent();
        eachHeld(90, 97);
    }
}
