package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tenterbook.colour.compare.ShadeReading;

class PooledCurvesTest {
    private static final double SCATTER = 0.4;
    private static final int[] FEW = {2, 4, 6};
    private static final int[] MANY = {1, 2, 3, 4, 6, 8, 10, 12};

    /** A studio of six groups whose A and b differ by a quarter or so; the last group has three pieces. */
    private record Studio(Map<Group, DipCurve> truths, Map<Group, List<DipPoint>> points, Group few) {
        static Studio of(long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            Map<Group, DipCurve> truths = new LinkedHashMap<>();
            Map<Group, List<DipPoint>> points = new LinkedHashMap<>();
            Group group = null;
            for (int g = 0; g < 6; g++) {
                group = new Group("cloth " + g, "woad");
                DipCurve truth = new DipCurve(
                        0.35, 16 * Math.exp(0.2 * random.nextGaussian()), 0.2 * Math.exp(0.2 * random.nextGaussian()));
                truths.put(group, truth);
                points.put(group, Vats.points(truth, g == 5 ? FEW : MANY, SCATTER, random));
            }
            return new Studio(truths, points, group);
        }
    }

    private static PooledCurves fit(Map<Group, List<DipPoint>> groups) {
        var finding = PooledCurves.fit(groups);
        return finding.value().orElseThrow(() -> new AssertionError(finding.refusal()));
    }

    @Test
    void aGroupOfThreePiecesIsForetoldBetterByBorrowingThanByTheStudioAlone() {
        double pooled = 0;
        double studioAlone = 0;
        int held = 0;
        int runs = 120;
        for (int seed = 0; seed < runs; seed++) {
            Studio studio = Studio.of(seed);
            PooledCurves fit = fit(studio.points);
            DipCurve truth = studio.truths.get(studio.few);
            FittedDips few = fit.groups().get(studio.few);
            pooled += square(few.curve().at(9) - truth.at(9));
            studioAlone += square(fit.studio().curve().at(9) - truth.at(9));
            held += few.curveAt(9).plausible().holds(truth.at(9)) ? 1 : 0;
            assertThat(fit.borrowed().get(studio.few)).isBetween(0.0, 1.0);
        }
        assertThat(Math.sqrt(pooled / runs)).isLessThan(0.7 * Math.sqrt(studioAlone / runs));
        assertThat(100.0 * held / runs).as("percent held").isBetween(90.0, 98.0);
    }

    @Test
    void aGroupWithManyPiecesKeepsItsOwnCurveAndOneWithFewBorrows() {
        Studio studio = Studio.of(77);
        PooledCurves fit = fit(studio.points);
        Group many = studio.points.keySet().iterator().next();
        double alone = Vats.fitted(studio.points.get(many)).curve().at(6);
        assertThat(fit.groups().get(many).curve().at(6)).isCloseTo(alone, within(0.4));
        assertThat(fit.borrowed().get(studio.few)).isGreaterThan(fit.borrowed().get(many));
    }

    @Test
    void aGroupWithoutPiecesHasTheStudiosMiddleAndTheWidestDoubt() {
        Studio studio = Studio.of(5);
        Map<Group, List<DipPoint>> groups = new LinkedHashMap<>(studio.points);
        Group none = new Group("hemp", "woad");
        groups.put(none, List.of());
        PooledCurves fit = fit(groups);
        FittedDips stranger = fit.groups().get(none);
        assertThat(fit.borrowed().get(none)).isEqualTo(1);
        assertThat(stranger.points()).isEmpty();
        assertThat(width(stranger)).isGreaterThan(width(fit.groups().get(studio.few)));
        assertThat(stranger.dipsFor(8).evidence()).isEmpty();
        assertThat(stranger.mostDipsSeen()).isEqualTo(12);
    }

    @Test
    void theSameGroupsGiveTheSameAnswer() {
        Studio studio = Studio.of(8);
        FittedDips one = fit(studio.points).groups().get(studio.few);
        FittedDips other = fit(studio.points).groups().get(studio.few);
        assertThat(other.curve()).isEqualTo(one.curve());
        assertThat(other.dipsFor(9)).isEqualTo(one.dipsFor(9));
    }

    @Test
    void alikeGroupsWithoutScatterGiveTheOneCurve() {
        Map<Group, List<DipPoint>> groups = new LinkedHashMap<>();
        for (String cloth : List.of("silk", "lawn", "voile")) {
            groups.put(new Group(cloth, "woad"), Vats.points(Vats.REFERENCE, MANY, 0, new SplittableRandom(1)));
        }
        fit(groups)
                .groups()
                .values()
                .forEach(group -> assertThat(group.curve().at(5)).isCloseTo(Vats.REFERENCE.at(5), within(0.01)));
    }

    @Test
    void groupsReadWithDifferentThingsAreNeverMixed() {
        Studio studio = Studio.of(5);
        Map<Group, List<DipPoint>> groups = new LinkedHashMap<>(studio.points);
        Group photo = new Group("wool", "woad");
        groups.put(
                photo,
                new ArrayList<>(List.of(
                        new DipPoint(DipCount.exactly(3), new ShadeReading(4, "red channel"), "V24-010", photo))));
        assertThat(PooledCurves.fit(groups).refusal()).contains("never mixed");
        assertThat(PooledCurves.fit(Map.of()).refusal()).contains("here are 0");
    }

    private static double width(FittedDips fit) {
        var plausible = fit.curveAt(8).plausible();
        return plausible.high() - plausible.low();
    }

    private static double square(double x) {
        return x * x;
    }
}
