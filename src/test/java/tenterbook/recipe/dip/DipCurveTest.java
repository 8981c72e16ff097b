package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class DipCurveTest {
    /** Worked by hand from 18 (1 − e^(−0.22 n)), with a desk calculator. */
    @Test
    void depthsOfTheReferenceCurve() {
        double[] depths = {3.555, 6.407, 8.697, 10.534, 13.192, 14.903, 16.006, 16.715};
        for (int i = 0; i < depths.length; i++) {
            assertThat(Vats.depth(Vats.DIPS[i])).isCloseTo(depths[i], within(0.0005));
        }
    }

    @Test
    void farFromLevellingOffTheFormIsAPower() {
        DipCurve power = new DipCurve(1e-5, 0.7);
        assertThat(power.at(8) - power.at(2)).isCloseTo(0.7 * Math.log(4), within(1e-3));
    }

    @Property
    void moreDipsAreDeeperAndNeverPassTheLimit(
            @ForAll @DoubleRange(min = 0.02, max = 1) double rate,
            @ForAll @DoubleRange(min = 0.4, max = 1.2) double power,
            @ForAll @DoubleRange(min = 0.5, max = 15) double dips) {
        DipCurve curve = new DipCurve(rate, power);
        assertThat(curve.at(dips + 0.1)).isGreaterThan(curve.at(dips)).isNegative();
    }

    @Test
    void aVagueCountIsMetByItsMeanAndKnowsItsScatter() {
        DipCurve line = new DipCurve(1e-9, 1);
        DipCount sixToEight = new DipCount(6, 8);
        // The logarithms of 6, 7 and 8: mean ln 336 / 3.
        assertThat(line.mean(sixToEight) - line.at(1)).isCloseTo(Math.log(336) / 3, within(1e-6));
        assertThat(line.vagueness(sixToEight)).isCloseTo(0.01382, within(1e-5));
        assertThat(line.vagueness(DipCount.exactly(7))).isZero();
        assertThat(line.mean(new DipCount(0, 1))).isEqualTo(line.at(1));
    }

    @Test
    void numbersThatMakeNoCurveAreRefused() {
        assertThatThrownBy(() -> new DipCurve(-0.1, 1)).hasMessageContaining("-0.1");
        assertThatThrownBy(() -> new DipCurve(1, 0)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new DipCurve(1, Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> new DipCount(8, 6)).hasMessageContaining("8 to 6");
        assertThatThrownBy(() -> new DipCount(-1, 6)).hasMessageContaining("-1 to 6");
        assertThatThrownBy(() -> Vats.point(3, 0)).hasMessageContaining("above 0");
    }
}
