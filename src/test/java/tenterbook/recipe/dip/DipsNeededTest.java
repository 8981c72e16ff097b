package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tenterbook.colour.compare.ShadeReading;
import tenterbook.recipe.dip.DipsNeeded.Verdict;

class DipsNeededTest {
    private static final FittedDips FIT =
            Vats.fitted(Vats.points(Vats.REFERENCE, Vats.DIPS, 0.1, new SplittableRandom(3)));

    @Test
    void aDepthWithinTheArchiveHasARangeOfDipsAndItsPieces() {
        DipsNeeded needed = FIT.dipsFor(12);
        assertThat(needed.verdict()).isEqualTo(Verdict.WITHIN);
        assertThat(needed.best()).isCloseTo(4.74, within(0.15));
        assertThat(needed.plausible().holds(4.736)).isTrue();
        assertThat(needed.plausible().high() - needed.plausible().low()).isBetween(0.1, 1.0);
        assertThat(needed.evidence().get(0).dips()).isIn(DipCount.exactly(4), DipCount.exactly(6));
        assertThat(needed.sentence().inEnglish()).startsWith("About 4.").contains("plausibly");
    }

    /** A new piece of the range's ends: the target is just inside the band of pieces, on its upper or lower edge. */
    @Test
    void theRangeOfDipsIsTheBandOfPiecesReadTheOtherWay() {
        DipsNeeded needed = FIT.dipsFor(12);
        assertThat(FIT.pieceAt(needed.plausible().low()).plausible().high()).isCloseTo(12, within(0.01));
        assertThat(FIT.pieceAt(needed.plausible().high()).plausible().low()).isCloseTo(12, within(0.01));
    }

    @Test
    void everyVerdictHasItsCase() {
        assertThat(FIT.dipsFor(0).verdict()).isEqualTo(Verdict.ALREADY_DEEPER);
        assertThat(FIT.dipsFor(17.7).verdict()).isEqualTo(Verdict.BEYOND_SEEN);
        DipsNeeded never = FIT.dipsFor(25);
        assertThat(never.verdict()).isEqualTo(Verdict.NOT_REACHABLE);
        assertThat(never.best()).isInfinite();
        assertThat(never.plausible().high()).isInfinite();
        assertThat(never.sentence().inEnglish()).contains("Out of reach");
        assertThat(FIT.dipsFor(17.7).sentence().inEnglish()).contains("sample first");
    }

    @Test
    void moreDipsFromADepthFollowTheCurveFromThere() {
        // From 9.047 (three dips) to 12 (4.736 dips) on the true curve.
        ShadeReading now = new ShadeReading(9.047, "blue channel");
        DipsNeeded more = FIT.moreDips(now, 12).value().orElseThrow();
        assertThat(more.best()).isCloseTo(1.736, within(0.1));
        assertThat(more.plausible().holds(1.736)).isTrue();
        assertThat(FIT.moreDips(now, 8).value().orElseThrow().verdict()).isEqualTo(Verdict.ALREADY_DEEPER);
        assertThat(FIT.moreDips(now, 25).value().orElseThrow().verdict()).isEqualTo(Verdict.NOT_REACHABLE);
        ShadeReading photo = new ShadeReading(9, "red channel");
        assertThat(FIT.moreDips(photo, 12).refusal()).contains("a photograph, red channel");
    }

    @Test
    void fewScatteredPointsLeaveTheLimitOpen() {
        FittedDips fit = Vats.fitted(List.of(
                Vats.point(1, 4.4), Vats.point(2, 6.1), Vats.point(4, 11.9), Vats.point(6, 13.6), Vats.point(7, 16)));
        assertThat(fit.limit().high()).isInfinite();
        assertThat(fit.rate().low()).isZero();
        assertThat(fit.dipsFor(60).verdict()).isEqualTo(Verdict.BEYOND_SEEN);
    }

    @Test
    void aPieceIsLessCertainThanTheCurve() {
        assertThat(FIT.pieceAt(5).plausible().low())
                .isLessThan(FIT.curveAt(5).plausible().low());
        assertThat(FIT.pieceAt(5).plausible().high())
                .isGreaterThan(FIT.curveAt(5).plausible().high());
        assertThat(FIT.leaveOneOutError().orElseThrow()).isGreaterThan(FIT.residualSpread());
    }

    @Test
    void aTargetThatIsNoDepthIsRefused() {
        assertThatThrownBy(() -> FIT.dipsFor(-1)).hasMessageContaining("-1");
        assertThatThrownBy(() -> FIT.dipsFor(Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> FIT.curveAt(-2)).hasMessageContaining("-2");
    }
}
