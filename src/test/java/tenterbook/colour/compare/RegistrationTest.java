package tenterbook.colour.compare;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.Thorough;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.MeasurementResult;

class RegistrationTest {
    private static final Lab BLUE = new Lab(34, -2, -25);
    private static final Lab FADED = new Lab(45, -2, -20);
    private static final Lab WHITE = new Lab(88, 0, 6);
    private static final int W = 320;
    private static final int H = 240;

    /** The later picture shows at (x, y) what the earlier shows at back(x, y). */
    private static Alignment warp(double scale, double degrees, double dx, double dy) {
        double x = (W - 1) / 2.0;
        double y = (H - 1) / 2.0;
        return new Alignment(scale, degrees, dx, dy, 1, x, y, x, y);
    }

    @ParameterizedTest
    @CsvSource({"1.08, -7, -12, 9", "0.85, 12, 10, 4", "1.3, 0, -20, 15", "0.7, -25, 0, 0"})
    void aWarpIsFoundToAPixel(double scale, double degrees, double dx, double dy) {
        Cloths.Image image = Cloths.blots(11, 60);
        Alignment back = warp(scale, degrees, dx, dy);
        ComparedPicture before = Cloths.paint(image, W, H, null, BLUE, WHITE, 1);
        ComparedPicture after = Cloths.paint(image, W, H, back, FADED, WHITE, 1.5);
        MeasurementResult<Alignment> finding = Registration.align(before, after);
        Alignment found = finding.value().orElseThrow(() -> new AssertionError(finding.refusal()));
        double worst = 0;
        for (int y = 0; y < H; y += 20) {
            for (int x = 0; x < W; x += 20) {
                double u = found.x(x, y);
                double v = found.y(x, y);
                worst = Math.max(worst, Math.hypot(back.x(u, v) - x, back.y(u, v) - y));
            }
        }
        assertThat(worst).as("pixels astray, %s", found).isLessThan(1);
        assertThat(found.correlation()).isGreaterThan(0.9);
    }

    @Test
    void picturesOfTwoSizesAreLaidOverEachOther() {
        Cloths.Image image = Cloths.blots(4, 60);
        ComparedPicture before = Cloths.paint(image, 320, 240, null, BLUE, WHITE, 1);
        ComparedPicture after = Cloths.paint(image, 480, 360, null, BLUE, WHITE, 1);
        Alignment found = Registration.align(before, after).value().orElseThrow();
        assertThat(found.scale()).isBetween(1.497, 1.503);
        assertThat(Math.hypot(found.x(20, 20) - 30.25, found.y(20, 20) - 30.25)).isLessThan(1);
    }

    @Test
    void otherClothIsNotMeasurable() {
        for (int seed = 0; seed < Thorough.times(2, 5); seed++) {
            ComparedPicture before = Cloths.paint(Cloths.blots(seed, 60), W, H, null, BLUE, WHITE, 1);
            ComparedPicture after = Cloths.paint(Cloths.blots(100 + seed, 60), W, H, null, BLUE, WHITE, 1);
            assertThat(Registration.align(before, after).refusal()).contains("could not be laid over each other");
        }
    }

    @Test
    void aPlainClothIsNotMeasurable() {
        ComparedPicture plain = Cloths.paint((x, y) -> 0, W, H, null, BLUE, WHITE, 0.5);
        ComparedPicture image = Cloths.paint(Cloths.blots(4, 60), W, H, null, BLUE, WHITE, 1);
        assertThat(Registration.align(image, plain).refusal()).contains("the later picture is too even");
        assertThat(Registration.align(plain, image).refusal()).contains("the earlier picture is too even");
    }

    @Test
    void aRepeatingPatternThatFitsTwiceIsNotMeasurable() {
        Cloths.Image waves = (x, y) -> 0.5 + 0.25 * Math.sin(12 * x) + 0.25 * Math.sin(12 * y);
        ComparedPicture before = Cloths.paint(waves, W, H, null, BLUE, WHITE, 1);
        ComparedPicture after = Cloths.paint(waves, W, H, warp(1, 0, 5, 0), BLUE, WHITE, 1);
        assertThat(Registration.align(before, after).refusal()).contains("the pattern repeats");
    }
}
