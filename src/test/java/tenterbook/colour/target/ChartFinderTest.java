package tenterbook.colour.target;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;

/** Rendered scenes: a chart is a chart, and light that falls off over one ground is none. */
class ChartFinderTest {
    private static final ChartReference TABLE = ChartReference.FROM_NOVEMBER_2014;
    private static final UnaryOperator<LinearRgb> PLAIN = CardScene.gains(0.9, 0.9, 0.9);
    private static final int WIDTH = 800;
    private static final int HEIGHT = 600;

    @ParameterizedTest
    @CsvSource({
        "0,1,1,1,0.1",
        "12,1,1,1,0.1",
        "90,1,0.9,0.7,0.1",
        "185,0.75,0.9,1,0.1",
        "-70,0.6,0.6,0.6,0.25",
        "5,1,1,1,0"
    })
    void aChartIsProposedWithItsCornersAndNoneOfItsPatchesAsACard(
            double degrees, double r, double g, double b, double gap) {
        CardOutline truth = turned(degrees);
        Pixels picture = scene(truth, gap).seen(CardScene.gains(0.9 * r, 0.9 * g, 0.9 * b), 1.5);
        CardFinder.Found found = CardFinder.find(picture).orElseThrow();
        assertThat(found.chart()).isTrue();
        assertThat(CardFinder.all(picture)).filteredOn(each -> !each.chart()).isEmpty();
        assertThat(CardFinder.sure(picture)).isEmpty();
        assertThat(furthest(found.outline(), truth)).as("pixels").isLessThan(14);
        ChartCorrection read = ChartCorrection.of(picture, found.outline(), TABLE);
        assertThat(read.used()).isGreaterThanOrEqualTo(22);
        assertThat(read.holdOut()).isLessThan(1);
    }

    @Test
    void aChartSeenAslantIsFound() {
        CardFinder.Found found =
                CardFinder.find(ChartTest.scene(TABLE).seen(ChartTest.MIXED, 1)).orElseThrow();
        assertThat(found.chart()).isTrue();
        assertThat(ChartCorrection.of(ChartTest.scene(TABLE).seen(ChartTest.MIXED, 1), found.outline(), TABLE)
                        .used())
                .isEqualTo(24);
    }

    @Test
    void aRowOfGreysAloneIsNeitherACardNorAChart() {
        CardScene scene = new CardScene(WIDTH, HEIGHT, new Lab(82, 1, 8));
        for (int i = 0; i < 3; i++) {
            double left = 0.2 + 0.13 * i;
            scene.paint(
                    Region.rectangle(left, 0.3, left + 0.1, 0.3 + 0.1 * WIDTH / HEIGHT), new Lab(70 - 16 * i, 0, 0));
        }
        assertThat(CardFinder.all(scene.seen(PLAIN, 1.5))).isEmpty();
    }

    @Test
    void oneGroundOnWhichTheLightFallsOffIsNoRowOfSquaresAndACardOnItStaysACard() {
        Region card = Region.rectangle(0.4, 0.7, 0.55, 0.85);
        // From L 80 to 35 along the strip, which the finder cuts into even parts somewhat longer than high: squares but
        // for an edge.
        Pixels picture = new CardScene(WIDTH, HEIGHT, new Lab(25, 0, 0))
                .shade(
                        Region.rectangle(0.05, 0.1, 0.95, 0.27),
                        (x, y, old) -> LinearRgb.of(new Lab(80 - 50 * (x - 0.05), 0, 0)))
                .paint(card, KnownCard.grey18().lab())
                .seen(PLAIN, 1);
        assertThat(ChartFinder.look(LabRaster.of(picture, 700))).isEmpty();
        assertThat(CardFinder.find(picture).orElseThrow()).satisfies(found -> {
            assertThat(found.chart()).isFalse();
            assertThat(furthest(found.outline(), new CardOutline(card.corners())))
                    .isLessThan(3);
        });
    }

    /** A chart of 420 by 280 pixels in the middle, turned. */
    private static CardOutline turned(double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return new CardOutline(java.util.stream.Stream.of(
                        new double[] {-210, -140}, new double[] {210, -140}, new double[] {210, 140}, new double[] {
                            -210, 140
                        })
                .map(p -> new Corner(
                        (WIDTH / 2.0 + p[0] * c - p[1] * s) / WIDTH, (HEIGHT / 2.0 + p[0] * s + p[1] * c) / HEIGHT))
                .toList());
    }

    /** @param gap between patches, in patches */
    private static CardScene scene(CardOutline outline, double gap) {
        CardScene scene = new CardScene(WIDTH, HEIGHT, new Lab(70, 3, 12));
        Perspective chart = Perspective.of(outline.corners());
        scene.paint(
                new Region(List.of(
                        chart.at(-0.03, -0.04), chart.at(1.03, -0.04), chart.at(1.03, 1.04), chart.at(-0.03, 1.04))),
                new Lab(12, 0, 0));
        double wide = 6 + 5 * gap;
        double tall = 4 + 3 * gap;
        for (int i = 0; i < 24; i++) {
            double x = i % 6 * (1 + gap) / wide;
            double y = i / 6 * (1 + gap) / tall;
            scene.paint(
                    new Region(List.of(
                            chart.at(x, y),
                            chart.at(x + 1 / wide, y),
                            chart.at(x + 1 / wide, y + 1 / tall),
                            chart.at(x, y + 1 / tall))),
                    TABLE.patches().get(i).lab());
        }
        return scene;
    }

    /** Pixels from each true corner to its nearest found one, the largest. */
    private static double furthest(CardOutline found, CardOutline truth) {
        return truth.corners().stream()
                .mapToDouble(t -> found.corners().stream()
                        .mapToDouble(f -> Math.hypot((f.x() - t.x()) * WIDTH, (f.y() - t.y()) * HEIGHT))
                        .min()
                        .orElseThrow())
                .max()
                .orElseThrow();
    }
}
