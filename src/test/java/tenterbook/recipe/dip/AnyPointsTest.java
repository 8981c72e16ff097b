package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
        Arbitrary<Double> scatter = Arbitraries.of(0.0, 0.3, 1.5, 12.0);
        return Combinators.combine(
                        scatter,
                        Combinators.combine(low, wide, off)
                                .as((n, w, o) -> new double[] {n, w, o})
                                .list()
                                .ofMaxSize(14))
                .as((s, rows) -> rows.stream()
                        .map(r -> Vats.point(
                                new DipCount((int) r[0], (int) (r[0] + r[1])),
                                Math.max(0, Vats.REFERENCE.at(r[0] + r[1] / 2) + s * r[2])))
                        .toList());
    }

    @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
    void pointsGiveACurveInOrderOrASentence(@ForAll("points") List<DipPoint> points) {
        var finding = DipFit.of(points);
        if (finding.value().isEmpty()) {
            assertThat(finding.refusal()).startsWith("No dip curve: ").endsWith(".");
            return;
        }
        inOrder(finding.value().orElseThrow());
    }

    @Property(tries = 40, edgeCases = EdgeCasesMode.NONE)
    void groupsGiveCurvesInOrderOrASentence(@ForAll("points") List<DipPoint> points) {
        Map<Group, List<DipPoint>> groups = new LinkedHashMap<>();
        for (int i = 0; i < points.size(); i++) {
            groups.computeIfAbsent(new Group("cloth " + i % 4, "woad"), g -> new ArrayList<>())
                    .add(points.get(i));
        }
        var finding = PooledCurves.fit(groups);
        assertThat(finding.value().isEmpty())
                .isEqualTo(DipFit.of(points).value().isEmpty());
        finding.value().ifPresent(curves -> {
            assertThat(curves.groups().keySet()).isEqualTo(groups.keySet());
            curves.groups().values().forEach(AnyPointsTest::inOrder);
        });
    }

    private static void inOrder(FittedDips fit) {
        double before = 0;
        for (double n = 0; n <= 20; n += 4) {
            DipEstimate mean = fit.curveAt(n);
            // Where a vat is exhausted within a few dips, neighbouring values may be the same double.
            assertThat(mean.value()).isGreaterThanOrEqualTo(before);
            before = mean.value();
            assertThat(fit.pieceAt(n).plausible().low()).isLessThanOrEqualTo(mean.value());
            assertThat(fit.pieceAt(n).plausible().high()).isGreaterThanOrEqualTo(mean.value());
        }
        for (double target : new double[] {0, 5, 15, 60}) {
            assertThat(fit.dipsFor(target).sentence().inEnglish()).endsWith(".").doesNotContain("NaN");
        }
    }
}
