package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class DipCurveTest {
    /** Worked by hand from 0.35 + 18 (1 − e^(−0.22 n)), with a desk calculator. */
    @Test
    void depthsAndDipsOfTheReferenceCurve() {
        double[] depths = {3.905, 6.757, 9.047, 10.884, 13.542, 15.253, 16.356, 17.065};
        for (int i = 0; i < depths.length; i++) {
            assertThat(Vats.REFERENCE.at(Vats.DIPS[i])).isCloseTo(depths[i], within(0.0005));
        }
        assertThat(Vats.REFERENCE.dipsFor(12)).isCloseTo(4.736, within(0.0005));
    }

    @Property
    void moreDipsAreDeeperAndNeverPassTheLimit(
            @ForAll @DoubleRange(min = 0, max = 2) double base,
            @ForAll @DoubleRange(min = 0.1, max = 40) double rise,
            @ForAll @DoubleRange(min = 0.02, max = 2) double rate,
            @ForAll @DoubleRange(min = 0, max = 15) double dips) {
        DipCurve curve = new DipCurve(base, rise, rate);
        assertThat(curve.at(dips + 0.1)).isGreaterThan(curve.at(dips));
        assertThat(curve.at(dips)).isLessThan(curve.limit());
        assertThat(curve.at(0)).isEqualTo(base);
    }

    @Property
    void theDipsOfADepthComeBack(
            @ForAll @DoubleRange(min = 0, max = 2) double base,
            @ForAll @DoubleRange(min = 0.1, max = 40) double rise,
            @ForAll @DoubleRange(min = 0.02, max = 1) double rate,
            @ForAll @DoubleRange(min = 0, max = 15) double dips) {
        DipCurve curve = new DipCurve(base, rise, rate);
        assertThat(curve.dipsFor(curve.at(dips))).isCloseTo(dips, within(1e-6));
        assertThat(curve.dipsBetween(base, curve.at(dips))).isCloseTo(dips, within(1e-6));
    }

    @Test
    void aDepthOutsideTheCurveHasNoDipsOrEndlessOnes() {
        assertThat(Vats.REFERENCE.dipsFor(0.35)).isZero();
        assertThat(Vats.REFERENCE.dipsFor(18.35)).isInfinite();
        assertThat(Vats.REFERENCE.dipsBetween(5, 5)).isZero();
        assertThat(Vats.REFERENCE.dipsBetween(5, 20)).isInfinite();
    }

    @Test
    void aVagueCountIsMetByItsMeanAndKnowsItsScatter() {
        DipCurve line = new DipCurve(0, 1e6, 1e-6);
        DipCount sixToEight = new DipCount(6, 8);
        assertThat(line.mean(sixToEight)).isCloseTo(7, within(1e-3));
        // A whole number from three alike has variance (3² − 1) / 12.
        assertThat(line.vagueness(sixToEight)).isCloseTo(8.0 / 12, within(1e-3));
        assertThat(line.vagueness(DipCount.exactly(7))).isZero();
    }

    @Test
    void numbersThatMakeNoCurveAreRefused() {
        assertThatThrownBy(() -> new DipCurve(-0.1, 1, 1)).hasMessageContaining("-0.1");
        assertThatThrownBy(() -> new DipCurve(0, 0, 1)).hasMessageContaining("A and b above 0");
        assertThatThrownBy(() -> new DipCurve(0, 1, Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> new DipCount(8, 6)).hasMessageContaining("8 to 6");
        assertThatThrownBy(() -> new DipCount(-1, 6)).hasMessageContaining("-1 to 6");
    }
}
