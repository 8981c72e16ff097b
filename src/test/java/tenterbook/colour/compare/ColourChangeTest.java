package tenterbook.colour.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Lab;

class ColourChangeTest {
    /** By hand: 3, 4 and 12 make 13; a fade along the chroma axis turns no hue. */
    @Test
    void theDifferenceIsTheRootOfTheSquares() {
        ColourChange change = ColourChange.between(new Lab(40, 10, -20), new Lab(52, 7, -16));
        assertThat(change.cie1976()).isCloseTo(13, within(1e-12));
        assertThat(change.lightness()).isEqualTo(12);
        ColourChange paler = ColourChange.between(new Lab(40, 6, -8), new Lab(45, 3, -4));
        assertThat(paler.chroma()).isCloseTo(-5, within(1e-12));
        assertThat(paler.hue()).isCloseTo(0, within(1e-6));
    }

    @Test
    void aTurnTowardsALargerHueAngleIsPositive() {
        assertThat(ColourChange.between(new Lab(50, 20, 0), new Lab(50, 0, 20)).hue())
                .isPositive();
        assertThat(ColourChange.between(new Lab(50, 0, 20), new Lab(50, 20, 0)).hue())
                .isNegative();
        assertThat(ColourChange.between(new Lab(50, 0, 0), new Lab(60, 0, 0)).hue())
                .isZero();
    }

    /** CIE 15 gives ΔH* also as 2 √(C₁C₂) sin(Δh / 2); the two forms must agree. */
    @Property
    void bothPublishedFormsOfTheHueDifferenceAgree(
            @ForAll @DoubleRange(min = -80, max = 80) double a1,
            @ForAll @DoubleRange(min = -80, max = 80) double b1,
            @ForAll @DoubleRange(min = -80, max = 80) double a2,
            @ForAll @DoubleRange(min = -80, max = 80) double b2) {
        Lab one = new Lab(50, a1, b1);
        Lab other = new Lab(50, a2, b2);
        double turn = Math.toRadians(other.hueDegrees() - one.hueDegrees());
        double expected = 2 * Math.sqrt(one.chroma() * other.chroma()) * Math.sin(turn / 2);
        assertThat(Math.abs(ColourChange.between(one, other).hue())).isCloseTo(Math.abs(expected), within(1e-5));
    }

    /** Distances of the published CIEDE2000 pairs carry over unchanged. */
    @Test
    void bothDifferencesAreOfTheSamePair() {
        ColourChange change = ColourChange.between(new Lab(50, 2.6772, -79.7751), new Lab(50, 0, -82.7485));
        assertThat(change.ciede2000()).isCloseTo(2.0425, within(1e-4));
        assertThat(change.cie1976()).isCloseTo(Math.hypot(2.6772, 2.9734), within(1e-4));
    }
}
