package tenterbook.colour.target;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;

/** Rendered: one invented camera, a chart in one light and a card in another. {@link StatedErrorTest} has the real ones. */
class CameraProfileTest {
    private static final ChartReference TABLE = ChartReference.FROM_NOVEMBER_2014;
    private static final Region CARD = Region.rectangle(0.1, 0.6, 0.3, 0.9);
    private static final Region CLOTH = Region.rectangle(0.4, 0.1, 0.9, 0.9);
    private static final Lab WOAD = new Lab(38, -6, -24);

    private final Correction chart = ChartCorrection.of(
                    ChartTest.scene(TABLE).seen(ChartTest.MIXED, 1), ChartTest.OUTLINE, TABLE)
            .correction();

    @Test
    void aChartOfTheCameraAndACardInAnotherLightMeasureBetterThanTheCardAlone() {
        Pixels evening = evening(0.7, 0.9, 1.1);
        CardReading reading = CardReading.of(evening, CARD);
        Correction both = new CameraProfile(chart).with(reading, KnownCard.grey18());
        Correction alone = Correction.byGrey(reading, KnownCard.grey18());
        assertThat(Ciede2000.difference(
                        both.apply(reading.mean()).lab(), KnownCard.grey18().lab()))
                .as("the card has its colour")
                .isLessThan(0.01);
        // Measured 1.32: the channels see into each other, so a gain for each cannot undo the light wholly.
        assertThat(error(both, evening)).isLessThan(1.5).isLessThan(error(alone, evening) / 2);
        assertThat(both.how()).isEqualTo(Calibration.CAMERA_PROFILE);
        assertThat(both.tone()).isEqualTo(chart.tone());
        StatedError stated = StatedError.of(Calibration.CAMERA_PROFILE);
        assertThat(both.likelyError()).isBetween(stated.nineInTen(), stated.nineInTen() + 1);
        assertThat(both.halfError()).isBetween(stated.half(), stated.half() + 1);
    }

    @Test
    void aChartThatWasOffByMoreThanTheMethodStatesItsOwnErrors() {
        Correction poor = new Correction(Calibration.CHART, chart.matrix(), chart.offset(), chart.tone(), 9.0, 5.0, "");
        Correction both =
                new CameraProfile(poor).with(CardReading.of(evening(0.7, 0.9, 1.1), CARD), KnownCard.grey18());
        assertThat(both.likelyError()).isGreaterThanOrEqualTo(9);
        assertThat(both.halfError()).isGreaterThanOrEqualTo(5);
    }

    @Test
    void aCastThatNoErrorIsKnownForAndWhatIsNoChartAreRefused() {
        CardReading cast = CardReading.of(evening(0.3, 0.9, 1.1), CARD);
        assertThatThrownBy(() -> new CameraProfile(chart).with(cast, KnownCard.grey18()))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("so strong a cast");
        Correction grey = Correction.byGrey(CardReading.of(evening(1, 1, 1), CARD), KnownCard.grey18());
        assertThatThrownBy(() -> new CameraProfile(grey)).hasMessageContaining("comes from a chart");
    }

    private static Pixels evening(double red, double green, double blue) {
        return new CardScene(600, 400, new Lab(80, 1, 8))
                .paint(CARD, KnownCard.grey18().lab())
                .paint(CLOTH, WOAD)
                .seen(
                        light -> ChartTest.MIXED.apply(
                                new LinearRgb(red * light.red(), green * light.green(), blue * light.blue())),
                        1);
    }

    private static double error(Correction correction, Pixels picture) {
        return Ciede2000.difference(
                correction.measure(picture, CLOTH, WhitePoint.D65).lab(), WOAD);
    }
}
