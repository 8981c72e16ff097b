package tenterbook.colour.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.MeasurementResult;

class FadingTest {
    private static final int W = 320;
    private static final int H = 240;
    private static final Lab BLUE = new Lab(34, -2, -25);
    private static final Lab PALER = new Lab(39, -3, -21);
    private static final Lab WHITE = new Lab(88, 0, 6);
    /** Blots keep clear of the top left corner, which is all ground. */
    private static final Cloths.Image IMAGE =
            (x, y) -> x < -0.3 && y < -0.05 ? 0 : Cloths.blots(21, 60).at(x, y);

    private static final Region GROUND = Region.rectangle(0.05, 0.1, 0.3, 0.4);

    private static RegionChange change(Lab later, Alignment where, double allowance) {
        ComparedPicture before = Cloths.paint(IMAGE, W, H, null, BLUE, WHITE, 1);
        ComparedPicture after = Cloths.paint(IMAGE, W, H, where, later, WHITE, 1.5);
        MeasurementResult<Alignment> alignment = Registration.align(before, after);
        assertThat(alignment.refusal()).isEmpty();
        MeasurementResult<RegionChange> region =
                Fading.compare(before, after, alignment.value().orElseThrow(), GROUND, allowance);
        return region.value().orElseThrow(() -> new AssertionError(region.refusal()));
    }

    private static final Alignment AS_THEY_LIE =
            new Alignment(1, 0, 0, 0, 1, (W - 1) / 2.0, (H - 1) / 2.0, (W - 1) / 2.0, (H - 1) / 2.0);

    private static Alignment moved() {
        return new Alignment(1.04, 5, 6, -4, 1, (W - 1) / 2.0, (H - 1) / 2.0, (W - 1) / 2.0, (H - 1) / 2.0);
    }

    @Test
    void aKnownFadeIsMeasuredThroughATurnedPicture() {
        RegionChange change = change(PALER, moved(), 0);
        assertThat(change.change().lightness()).isCloseTo(5, within(0.3));
        assertThat(change.lightness().holds(5)).isTrue();
        // By hand: √(5² + 1² + 4²) = 6.48, nearest the chips of 6.8.
        assertThat(change.change().cie1976()).isCloseTo(6.48, within(0.3));
        assertThat(change.change().ciede2000()).isCloseTo(Ciede2000.difference(BLUE, PALER), within(0.3));
        assertThat(change.grade().grade()).isEqualTo("2");
        assertThat(change.ciede2000().low()).isPositive();
        assertThat(change.change().chroma()).isNegative();
    }

    @Test
    void anUnchangedClothIsNotCalledFaded() {
        RegionChange change = change(BLUE, moved(), 0.3);
        assertThat(change.ciede2000().low()).isZero();
        assertThat(change.grade().best()).isEqualTo("5");
    }

    @Test
    void theAllowanceWidensTheInterval() {
        RegionChange bare = change(PALER, moved(), 0);
        RegionChange allowed = change(PALER, moved(), 2);
        assertThat(allowed.ciede2000().low()).isCloseTo(bare.ciede2000().low() - 2, within(1e-9));
        assertThat(allowed.ciede2000().high()).isCloseTo(bare.ciede2000().high() + 2, within(1e-9));
        assertThat(allowed.grade().worst()).isEqualTo("1-2");
    }

    @Test
    void aFadeInOneHalfHasAWideInterval() {
        ComparedPicture before = Cloths.paint((x, y) -> 0, W, H, null, BLUE, WHITE, 1);
        ComparedPicture after = Cloths.paint((x, y) -> x > 0 ? 0.2 : 0, W, H, null, BLUE, WHITE, 1);
        RegionChange change = Fading.compare(before, after, AS_THEY_LIE, Region.WHOLE, 0)
                .value()
                .orElseThrow();
        assertThat(change.lightness().high() - change.lightness().low()).isGreaterThan(3);
    }

    @Test
    void whatCannotBeComparedIsNotMeasurable() {
        ComparedPicture cloth = Cloths.paint(IMAGE, W, H, null, BLUE, WHITE, 1);
        Alignment away = new Alignment(1, 0, -60, 0, 1, 159.5, 119.5, 159.5, 119.5);
        assertThat(Fading.compare(cloth, cloth, away, GROUND, 0).refusal()).contains("% of the marked part");
        assertThat(Fading.compare(cloth, cloth, AS_THEY_LIE, Region.rectangle(0.5, 0.5, 0.503, 0.504), 0)
                        .refusal())
                .contains("too small");
        ComparedPicture plain = Cloths.paint((x, y) -> 0, W, H, null, BLUE, WHITE, 0.5);
        assertThat(Registration.align(cloth, plain).refusal()).contains("Not measurable");
        assertThatThrownBy(() -> Fading.compare(cloth, cloth, AS_THEY_LIE, GROUND, -1))
                .hasMessageContaining("-1");
    }
}
