package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Whatever points a studio may have, it gets a curve in order or a sentence, and never a failure. */
class AnyPointsTest {
    @Provide
    Arbitrary<List<DipPoint>> points() {
        Arbitrary<Integer> low = Arbitraries.integers().between(0, 14);
        Arbitrary<Integer> wide = Arbitraries.frequency(
                net.jqwik.api.Tuple.of(4, 0), net.jqwik.api.Tuple.of(1, 1), net.jqwik.api.Tuple.of(1, 3));
        // Roughly on a curve, now and then far off, so that found curves and refusals both come up.
        Arbitrary<Double> off = Arbitraries.doubles().between(-1, 1).ofScale(3);
        Arbitrary<Double> scatter = Arbitraries.of(0.0, 0.1, 0.4, 3.0);
        return Combinators.combine(
                        scatter,
                        Combinators.combine(low, wide, off)
                                .as((n, w, o) -> new double[] {n, w, o})
                                .list()
                                .ofMaxSize(14))
                .as((s, rows) -> rows.stream()
                        .map(r -> Vats.point(
                                new DipCount((int) r[0], (int) (r[0] + r[1])),
                                Vats.depth(Math.max(0.2, r[0] + r[1] / 2)) * Math.exp(s * r[2])))
                        .toList());
    }

    @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
    void pointsGiveACurveInOrderOrASentence(@ForAll("points") List<DipPoint> points) {
        var finding = DipFit.of(points);
        if (finding.value().isEmpty()) {
            assertThat(finding.refusal()).startsWith("No estimate: ").endsWith(".");
            return;
        }
        FittedDips fit = finding.value().orElseThrow();
        double before = 0;
        for (double n = 0.5; n <= 20; n += 4) {
            DipEstimate piece = fit.pieceAt(n);
            // Where a vat is exhausted within a few dips, neighbouring values may be the same double.
            assertThat(piece.value()).isGreaterThanOrEqualTo(before);
            before = piece.value();
            assertThat(piece.plausible().holds(piece.value())).isTrue();
        }
        assertThat(fit.averageError()).isBetween(1.0, 100.0);
        for (double target : new double[] {1e-4, 0.5, 5, 15, 60, 1e4}) {
            inOrder(fit.dipsFor(target));
            inOrder(fit.moreDips(Vats.point(3, 4), target));
        }
    }

    private static void inOrder(DipsNeeded needed) {
        assertThat(needed.sentence().inEnglish()).endsWith(".").doesNotContain("NaN", "\u221e");
        assertThat(needed.best())
                .isBetween(needed.plausible().low(), needed.plausible().high());
    }
}
