package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tenterbook.colour.compare.ShadeReading;

class DipFitTest {
    @Test
    void exactPointsGiveTheirCurveBack() {
        FittedDips fit = Vats.fitted(Vats.points(Vats.REFERENCE, Vats.DIPS, 0, new SplittableRandom(1)));
        assertThat(fit.curve().base()).isCloseTo(0.35, within(0.0005));
        assertThat(fit.curve().rise()).isCloseTo(18, within(0.0005));
        assertThat(fit.curve().rate()).isCloseTo(0.22, within(0.0005));
        assertThat(fit.dipsFor(12).best()).isCloseTo(4.736, within(0.0005));
        assertThat(fit.residualSpread()).isLessThan(1e-5);
        assertThat(fit.leaveOneOutError().orElseThrow()).isLessThan(1e-4);
        assertThat(fit.rate().high() - fit.rate().low()).isLessThan(1e-4);
    }

    /** Two optimisers, by two routes: Brent on the rate alone, Levenberg and Marquardt on all three numbers. */
    @Test
    void twoOptimisersFindTheSameCurve() {
        for (int seed = 0; seed < 60; seed++) {
            Sample sample = Sample.of(Vats.points(Vats.REFERENCE, Vats.DIPS, 0.6, new SplittableRandom(seed)));
            DipCurve found = new Profile(sample).best();
            DipCurve other = CurveSearch.curve(
                    CurveSearch.search(sample, new DipCurve(0.5, 20, 0.3), null).getPoint());
            assertThat(sample.squares(found))
                    .as("seed %s", seed)
                    .isLessThanOrEqualTo(sample.squares(other) * (1 + 1e-9));
            assertThat(sample.squares(other)).as("seed %s", seed).isLessThan(sample.squares(found) * 1.002);
            assertThat(other.at(5)).as("seed %s", seed).isCloseTo(found.at(5), within(0.02));
        }
    }

    @Test
    void fewerThanFourDifferentCountsAreRefused() {
        List<DipPoint> points = List.of(
                Vats.point(2, 6.7), Vats.point(2, 6.9), Vats.point(4, 10.9), Vats.point(8, 15.2), Vats.point(8, 15.1));
        assertThat(DipFit.of(points).refusal())
                .contains("4 different numbers of dips, and here are 3")
                .contains("Measure pieces");
        assertThat(DipFit.of(List.of()).refusal()).contains("here are 0");
    }

    @Test
    void readingsInTwoBandsAreNeverMixed() {
        List<DipPoint> points = new ArrayList<>(Vats.points(Vats.REFERENCE, Vats.DIPS, 0, new SplittableRandom(1)));
        points.add(new DipPoint(DipCount.exactly(5), new ShadeReading(12.3, "red channel"), "V24-009", Vats.SILK));
        assertThat(DipFit.of(points).refusal())
                .contains("a photograph, blue channel and a photograph, red channel")
                .contains("never mixed");
    }

    @Test
    void pointsThatDoNotRiseAreRefused() {
        assertThat(DipFit.of(List.of(
                                Vats.point(1, 9),
                                Vats.point(2, 7),
                                Vats.point(4, 8),
                                Vats.point(8, 5),
                                Vats.point(9, 6)))
                        .refusal())
                .contains("does not rise");
        assertThat(DipFit.of(List.of(Vats.point(1, 7.1), Vats.point(2, 6.9), Vats.point(4, 7), Vats.point(8, 7.05)))
                        .refusal())
                .contains("does not rise");
    }

    @Test
    void aStraightRiseHasNoLimitToTell() {
        assertThat(DipFit.of(List.of(
                                Vats.point(1, 1),
                                Vats.point(2, 2),
                                Vats.point(4, 4),
                                Vats.point(8, 8.3),
                                Vats.point(9, 9.4)))
                        .refusal())
                .contains("straight line")
                .contains("as far as 9 dips");
    }

    @Test
    void aShadeLevelFromTheStartIsRefused() {
        assertThat(DipFit.of(List.of(
                                Vats.point(0, 0.3),
                                Vats.point(1, 9),
                                Vats.point(2, 9),
                                Vats.point(3, 9),
                                Vats.point(4, 9),
                                Vats.point(0, 0.2),
                                Vats.point(0, 0.4)))
                        .refusal())
                .contains("already level");
    }

    @Test
    void vagueCountsWeighLessThanCountedOnes() {
        SplittableRandom random = new SplittableRandom(5);
        List<DipPoint> counted = Vats.points(Vats.REFERENCE, Vats.DIPS, 0.2, random);
        List<DipPoint> withVague = new ArrayList<>(counted);
        // Remembered as 2 to 8; in truth 8. Taken as a counted 5 it would pull the curve up.
        withVague.add(Vats.point(new DipCount(2, 8), Vats.REFERENCE.at(8)));
        List<DipPoint> withWrong = new ArrayList<>(counted);
        withWrong.add(Vats.point(5, Vats.REFERENCE.at(8)));
        double alone = Vats.fitted(counted).curve().at(5);
        assertThat(Math.abs(Vats.fitted(withVague).curve().at(5) - alone))
                .isLessThan(0.25 * Math.abs(Vats.fitted(withWrong).curve().at(5) - alone));
    }

    @Test
    void theSamePointsGiveTheSameAnswerInAnyOrder() {
        List<DipPoint> points = Vats.points(Vats.REFERENCE, Vats.DIPS, 0.5, new SplittableRandom(9));
        List<DipPoint> turned = new ArrayList<>(points);
        java.util.Collections.reverse(turned);
        FittedDips one = Vats.fitted(points);
        FittedDips other = Vats.fitted(turned);
        assertThat(other.curve().rate()).isCloseTo(one.curve().rate(), within(1e-6));
        assertThat(other.limit().high()).isCloseTo(one.limit().high(), within(1e-4));
        assertThat(Vats.fitted(points).curve()).isEqualTo(one.curve());
    }
}
