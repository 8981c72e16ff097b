package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tenterbook.recipe.dip.DipsNeeded.Verdict;

class DipsNeededTest {
    private static final FittedDips FIT =
            Vats.fitted(Vats.points(new int[] {2, 3, 4, 6, 8, 10, 12}, 0.04, new SplittableRandom(3)));

    @Test
    void aDepthWithinTheArchiveHasARangeOfDipsAndItsPieces() {
        DipsNeeded needed = FIT.dipsFor(12);
        assertThat(needed.verdict()).isEqualTo(Verdict.WITHIN);
        // 12 = 18 (1 − e^(−0.22 n)) at n = 4.994.
        assertThat(needed.best()).isCloseTo(4.994, within(0.5));
        assertThat(needed.plausible().holds(4.994)).isTrue();
        assertThat(needed.plausible().high() - needed.plausible().low()).isBetween(0.3, 3.5);
        assertThat(needed.evidence()).hasSize(3);
        assertThat(needed.evidence().get(0).dips()).isIn(DipCount.exactly(4), DipCount.exactly(6));
        assertThat(needed.sentence().inEnglish()).startsWith("About ").contains("nine times in ten");
    }

    @Test
    void outsideTheMeasuredPiecesTheAnswerIsCalledAnExtrapolation() {
        DipsNeeded lighter = FIT.dipsFor(Vats.depth(1));
        assertThat(lighter.verdict()).isEqualTo(Verdict.BELOW_SEEN);
        assertThat(lighter.best()).isBetween(0.7, 1.5);
        assertThat(lighter.sentence().inEnglish()).contains("extrapolation: lighter", "sample first");
        DipsNeeded deeper = FIT.dipsFor(18.5);
        assertThat(deeper.verdict()).isEqualTo(Verdict.BEYOND_SEEN);
        assertThat(deeper.plausible().high()).isGreaterThan(12);
        assertThat(deeper.sentence().inEnglish()).contains("extrapolation: deeper", "sample first");
    }

    @Test
    void aDepthThatNoNumberOfDipsGivesHasNone() {
        DipsNeeded never = FIT.dipsFor(60);
        assertThat(never.verdict()).isEqualTo(Verdict.NOT_REACHABLE);
        assertThat(never.best()).isInfinite();
        assertThat(never.plausible().high()).isInfinite();
        assertThat(never.sentence().inEnglish()).contains("Out of reach");
        DipsNeeded pale = FIT.dipsFor(0.05);
        assertThat(pale.verdict()).isEqualTo(Verdict.ALREADY_DEEPER);
        assertThat(pale.plausible().high()).isLessThanOrEqualTo(1);
        assertThat(pale.sentence().inEnglish()).contains("Lighter than one dip");
    }

    @Test
    void moreDipsFromAPieceFollowTheCurveFromThere() {
        // A piece that takes up a fifth less than the others, at three dips, is led to what it has at six.
        DipPoint now = Vats.point(3, 0.8 * Vats.depth(3));
        DipsNeeded more = FIT.moreDips(now, 0.8 * Vats.depth(6));
        assertThat(more.more()).isTrue();
        assertThat(more.verdict()).isEqualTo(Verdict.WITHIN);
        assertThat(more.best()).isCloseTo(3, within(0.4));
        assertThat(more.plausible().holds(3)).isTrue();
        assertThat(FIT.moreDips(now, 6).verdict()).isEqualTo(Verdict.ALREADY_DEEPER);
        assertThat(FIT.moreDips(now, 6).sentence().inEnglish()).contains("that deep already");
        assertThat(FIT.moreDips(now, 80).verdict()).isEqualTo(Verdict.NOT_REACHABLE);
    }

    @Test
    void anIntervalIsWidenedToHoldAPieceOfTheSameColour() {
        DipsNeeded needed = FIT.dipsFor(12);
        assertThat(needed.holding(new DipCount(2, 3)).plausible())
                .isEqualTo(new tenterbook.colour.space.Interval(
                        2, needed.plausible().high()));
        assertThat(needed.holding(DipCount.exactly(5))).isEqualTo(needed);
    }

    @Test
    void fewScatteredPointsAreLessCertainThanManyCloseOnes() {
        FittedDips few =
                Vats.fitted(List.of(Vats.point(2, 4.4), Vats.point(3, 9.1), Vats.point(5, 9.9), Vats.point(8, 13.6)));
        assertThat(width(few.dipsFor(12))).isGreaterThan(1.5 * width(FIT.dipsFor(12)));
        assertThat(few.spread()).isGreaterThan(2 * FIT.spread());
        assertThat(few.averageError()).isGreaterThan(FIT.averageError());
    }

    private static double width(DipsNeeded needed) {
        return Math.log(needed.plausible().high() / needed.plausible().low());
    }

    @Test
    void aTargetThatIsNoDepthIsRefused() {
        assertThatThrownBy(() -> FIT.dipsFor(-1)).hasMessageContaining("-1");
        assertThatThrownBy(() -> FIT.dipsFor(Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> FIT.pieceAt(0)).hasMessageContaining("above 0");
    }
}
