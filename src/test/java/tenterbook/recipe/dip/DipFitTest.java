package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class DipFitTest {
    @Test
    void pointsWithoutScatterGiveTheirCurveBack() {
        FittedDips fit = Vats.fitted(Vats.points(Vats.DIPS, 0, new SplittableRandom(1)));
        for (double dips = 1; dips <= 12; dips++) {
            assertThat(fit.pieceAt(dips).value() / Vats.depth(dips))
                    .as("%s dips", dips)
                    .isCloseTo(1, within(0.03));
        }
        assertThat(fit.dipsFor(12).best()).isCloseTo(4.994, within(0.15));
        // The least spread that is considered is 3 %.
        assertThat(fit.spread()).isBetween(0.03, 0.045);
        assertThat(fit.averageError()).isBetween(1.0, 1.1);
    }

    @Test
    void theSpreadIsThatOfThePieces() {
        double sum = 0;
        for (int seed = 0; seed < 20; seed++) {
            sum += Vats.fitted(Vats.points(Vats.DIPS, 0.15, new SplittableRandom(seed)))
                    .spread();
        }
        assertThat(sum / 20).isCloseTo(Math.expm1(0.15), within(0.04));
    }

    @Test
    void fewerThanFourDifferentCountsAreRefused() {
        List<DipPoint> points = List.of(
                Vats.point(2, 6.7), Vats.point(2, 6.9), Vats.point(4, 10.9), Vats.point(8, 15.2), Vats.point(8, 15.1));
        assertThat(DipFit.of(points).refusal())
                .contains("at least 4 different numbers of dips", "here are 3")
                .contains("Measure pieces");
        assertThat(DipFit.of(List.of()).refusal()).contains("here are 0");
        List<DipPoint> withUndyed = new ArrayList<>(points);
        withUndyed.add(Vats.point(0, 0.1));
        assertThat(DipFit.of(withUndyed).refusal()).contains("here are 3");
        withUndyed.add(Vats.point(6, 13.1));
        assertThat(DipFit.of(withUndyed).value()).isPresent();
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
                .contains("do not get deeper");
        assertThat(DipFit.of(List.of(Vats.point(1, 7.1), Vats.point(2, 6.9), Vats.point(4, 7), Vats.point(8, 7.05)))
                        .refusal())
                .contains("do not get deeper");
    }

    @Test
    void aStraightRiseAndAShadeLevelFromEarlyOnHaveACurveToo() {
        FittedDips straight = Vats.fitted(
                List.of(Vats.point(1, 1), Vats.point(2, 2), Vats.point(4, 4), Vats.point(8, 8.3), Vats.point(9, 9.4)));
        assertThat(straight.dipsFor(6).best()).isCloseTo(6, within(0.4));
        FittedDips level = Vats.fitted(List.of(
                Vats.point(1, 3),
                Vats.point(1, 3.4),
                Vats.point(2, 8),
                Vats.point(4, 9),
                Vats.point(8, 9.1),
                Vats.point(12, 9)));
        assertThat(level.dipsFor(9).plausible().low()).isLessThan(4.5);
        assertThat(level.dipsFor(9).plausible().high()).isGreaterThan(12);
    }

    @Test
    void vagueCountsWeighLessThanCountedOnes() {
        List<DipPoint> counted = Vats.points(Vats.DIPS, 0.05, new SplittableRandom(5));
        List<DipPoint> withVague = new ArrayList<>(counted);
        // Remembered as 2 to 8; in truth 8. Taken as a counted 5 it would pull the curve up.
        withVague.add(Vats.point(new DipCount(2, 8), Vats.depth(8)));
        List<DipPoint> withWrong = new ArrayList<>(counted);
        withWrong.add(Vats.point(5, Vats.depth(8)));
        double alone = Vats.fitted(counted).pieceAt(5).value();
        assertThat(Math.abs(Vats.fitted(withVague).pieceAt(5).value() - alone))
                .isLessThan(0.5 * Math.abs(Vats.fitted(withWrong).pieceAt(5).value() - alone));
    }

    @Test
    void theSamePointsGiveTheSameAnswerInAnyOrder() {
        List<DipPoint> points = Vats.points(Vats.DIPS, 0.1, new SplittableRandom(2));
        List<DipPoint> reversed = new ArrayList<>(points);
        java.util.Collections.reverse(reversed);
        assertThat(Vats.fitted(reversed).dipsFor(9).best())
                .isCloseTo(Vats.fitted(points).dipsFor(9).best(), within(1e-9));
    }
}
