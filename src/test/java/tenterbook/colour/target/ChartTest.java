package tenterbook.colour.target;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.Srgb;

class ChartTest {
    /** Seen aslant: no two sides alike. */
    static final CardOutline OUTLINE = new CardOutline(
            List.of(new Corner(0.06, 0.1), new Corner(0.62, 0.05), new Corner(0.66, 0.72), new Corner(0.04, 0.66)));

    static final Region CLOTH = Region.rectangle(0.72, 0.2, 0.95, 0.8);
    static final Lab MADDER = new Lab(43, 39, 27);
    /** A camera whose channels see into each other; rows sum to about 0.85, so that white does not clip. */
    static final UnaryOperator<LinearRgb> MIXED = CardScene.mix(0.62, 0.16, 0.04, 0.10, 0.66, 0.08, 0.03, 0.17, 0.60);

    /**
     * The 8-bit sRGB numbers that the chart's maker printed with it (GretagMacbeth), from memory; they are older than the
     * table and rounded, so they agree within four and on average within two; D50 taken for D65 agrees less.
     */
    @Test
    void theReferenceUnderD65AgreesWithTheScreenColoursPrintedForTheChart() {
        int[][] printed = {
            {1, 115, 82, 68}, {2, 194, 150, 130}, {4, 87, 108, 67}, {13, 56, 61, 150}, {14, 70, 148, 73},
            {15, 175, 54, 60}, {16, 231, 199, 31}, {17, 187, 86, 149}, {20, 200, 200, 200}, {24, 52, 52, 52}
        };
        List<ChartReference.Patch> patches = ChartReference.BEFORE_NOVEMBER_2014.patches();
        assertThat(patches)
                .hasSize(24)
                .last()
                .extracting(ChartReference.Patch::name)
                .isEqualTo("black 2");
        double sum = 0;
        double unadapted = 0;
        for (int[] row : printed) {
            Lab screen = new Srgb(row[1], row[2], row[3]).lab();
            Lab ours = patches.get(row[0] - 1).lab();
            assertThat(Ciede2000.difference(ours, screen))
                    .as("patch %d", row[0])
                    .isLessThan(4);
            sum += Ciede2000.difference(ours, screen);
            unadapted += Ciede2000.difference(WhitePoint.D65.adapt(ours, WhitePoint.D50), screen);
        }
        assertThat(sum / printed.length).isLessThan(2).isLessThan(unadapted / printed.length / 1.5);
    }

    @ParameterizedTest
    @EnumSource(ChartReference.class)
    void aMixedCastComesBackWithinOne(ChartReference reference) {
        Pixels picture = scene(reference).seen(MIXED, 1.5);
        ChartCorrection chart = ChartCorrection.of(picture, OUTLINE, reference);
        assertThat(chart.used()).isEqualTo(24);
        assertThat(chart.holdOut()).isLessThan(0.6);
        assertThat(chart.worst()).isGreaterThanOrEqualTo(chart.holdOut()).isLessThan(2);
        MeasuredColour cloth = chart.correction().measure(picture, CLOTH, WhitePoint.D65);
        assertThat(Ciede2000.difference(cloth.lab(), MADDER)).isLessThan(1);
        assertThat(cloth.how()).isEqualTo(Calibration.CHART);
        assertThat(cloth.likelyError())
                .isBetween(StatedError.of(Calibration.CHART).nineInTen(), 6.0);
        for (int i = 0; i < 24; i++) {
            Lab patch = chart.correction()
                    .measure(picture, chart.grid().patches().get(i), WhitePoint.D65)
                    .lab();
            assertThat(Ciede2000.difference(patch, reference.patches().get(i).lab()))
                    .as("patch %d", i + 1)
                    .isLessThan(1.5);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void theCornersMayBeginAnywhereAndGoEitherWay(int first) {
        ChartReference reference = ChartReference.FROM_NOVEMBER_2014;
        Pixels picture = scene(reference).seen(MIXED, 1);
        List<Corner> corners = new ArrayList<>(OUTLINE.corners());
        Collections.rotate(corners, first);
        ChartCorrection there = ChartCorrection.of(picture, new CardOutline(corners), reference);
        Collections.reverse(corners);
        ChartCorrection back = ChartCorrection.of(picture, new CardOutline(corners), reference);
        assertThat(there.grid()).isEqualTo(back.grid()).isEqualTo(ChartGrid.fromCorners(OUTLINE));
    }

    @Test
    void cornersAFewPixelsOffDoNoHarm() {
        ChartReference reference = ChartReference.BEFORE_NOVEMBER_2014;
        Pixels picture = scene(reference).seen(MIXED, 1);
        CardOutline off = new CardOutline(List.of(
                new Corner(0.066, 0.106),
                new Corner(0.615, 0.055),
                new Corner(0.665, 0.727),
                new Corner(0.036, 0.652)));
        ChartCorrection chart = ChartCorrection.of(picture, off, reference);
        assertThat(Ciede2000.difference(
                        chart.correction()
                                .measure(picture, CLOTH, WhitePoint.D65)
                                .lab(),
                        MADDER))
                .isLessThan(1);
    }

    @Test
    void clippedPatchesAreLeftOutAndNamed() {
        ChartReference reference = ChartReference.BEFORE_NOVEMBER_2014;
        // Cyan lies outside sRGB, so a camera that keeps to it writes no red there at all.
        Pixels picture = scene(reference).seen(CardScene.gains(0.9, 0.9, 0.9), 0.5);
        ChartCorrection chart = ChartCorrection.of(picture, OUTLINE, reference);
        assertThat(chart.faults()).hasToString("[Patch 18 (cyan) is too dark in a channel.]");
        assertThat(chart.used()).isEqualTo(23);
        assertThat(chart.correction().note()).contains("Patch 18");
        assertThat(chart.holdOut()).isLessThan(0.5);
    }

    @Test
    void aBurntChartIsRefusedWithItsPatches() {
        Pixels picture = scene(ChartReference.BEFORE_NOVEMBER_2014).seen(CardScene.gains(4, 4, 4), 0.5);
        assertThatThrownBy(() -> ChartCorrection.of(picture, OUTLINE, ChartReference.BEFORE_NOVEMBER_2014))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("18 good patches or more are needed")
                .hasMessageContaining("Patch 19 (white 9.5) is too bright.");
    }

    @Test
    void somethingElseMarkedAsAChartIsRefusedByItsHoldOut() {
        CardScene stripes = new CardScene(600, 400, new Lab(60, 0, 0));
        stripes.shade(
                Region.WHOLE,
                (x, y, old) -> LinearRgb.of(new Lab(
                        30 + 40 * Math.round(x * 3) / 3.0,
                        25 * Math.cos(Math.round(y * 5)),
                        30 * Math.sin(Math.round(x * 7)))));
        Pixels picture = stripes.seen(CardScene.gains(1, 1, 1), 1);
        assertThatThrownBy(() -> ChartCorrection.of(picture, OUTLINE, ChartReference.FROM_NOVEMBER_2014))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("The chart was not used");
        Pixels flat = new CardScene(600, 400, new Lab(60, 0, 0)).seen(CardScene.gains(1, 1, 1), 0);
        assertThatThrownBy(() -> ChartCorrection.of(flat, OUTLINE, ChartReference.FROM_NOVEMBER_2014))
                .isInstanceOf(CardRefused.class);
    }

    /**
     * What the half of {@link StatedError} covers: two cameras whose files hold other primaries (Display P3 and Adobe RGB;
     * matrices from sRGB computed from the primaries in SMPTE EG 432-1 and Adobe RGB (1998), from memory) without saying
     * so. Greys come out right, colours do not.
     */
    @Test
    void theFloorOfAGreyCardCoversUnnamedPrimaries() {
        UnaryOperator<LinearRgb> p3 = CardScene.mix(0.8225, 0.1774, 0, 0.0332, 0.9669, 0, 0.0171, 0.0724, 0.9108);
        UnaryOperator<LinearRgb> adobe = CardScene.mix(0.7152, 0.2848, 0, 0, 1, 0, 0, 0.0412, 0.9588);
        for (UnaryOperator<LinearRgb> camera : List.of(p3, adobe)) {
            List<Double> errors = ChartReference.FROM_NOVEMBER_2014.patches().stream()
                    .limit(18)
                    .map(patch -> Ciede2000.difference(
                            camera.apply(LinearRgb.of(patch.lab())).lab(), patch.lab()))
                    .sorted()
                    .toList();
            assertThat(errors.get(9))
                    .isBetween(1.0, StatedError.of(Calibration.GREY_CARD).half());
            assertThat(errors.get(17))
                    .as("the worst patch may pass the floor: it is a typical error")
                    .isLessThan(12);
        }
    }

    static CardScene scene(ChartReference reference) {
        CardScene scene = new CardScene(600, 400, new Lab(25, 0, 0)).paint(CLOTH, MADDER);
        Perspective perspective = Perspective.of(OUTLINE.corners());
        double across = 6.6;
        double down = 4.42;
        for (int i = 0; i < 24; i++) {
            double x = i % 6 * 1.12 / across;
            double y = i / 6 * 1.14 / down;
            double w = 1 / across;
            double h = 1 / down;
            scene.paint(
                    new Region(List.of(
                            perspective.at(x, y),
                            perspective.at(x + w, y),
                            perspective.at(x + w, y + h),
                            perspective.at(x, y + h))),
                    reference.patches().get(i).lab());
        }
        return scene;
    }
}
