package tenterbook.colour.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
    }

    /** Distances of the published CIEDE2000 pairs carry over unchanged. */
    @Test
    void bothDifferencesAreOfTheSamePair() {
        ColourChange change = ColourChange.between(new Lab(50, 2.6772, -79.7751), new Lab(50, 0, -82.7485));
        assertThat(change.ciede2000()).isCloseTo(2.0425, within(1e-4));
        assertThat(change.cie1976()).isCloseTo(Math.hypot(2.6772, 2.9734), within(1e-4));
    }
}
