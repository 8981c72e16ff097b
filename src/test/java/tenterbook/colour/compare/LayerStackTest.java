package tenterbook.colour.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tenterbook.colour.compare.DepthOfShade.Channel;
import tenterbook.colour.compare.LayerDepths.Decay;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.SrgbCurve;

class LayerStackTest {
    private static final int SIDE = 160;
    private static final Lab BLUE = new Lab(34, -2, -25);
    private static final Lab WHITE = new Lab(88, 0, 6);

    /** A panel whose red channel has this K/S on the mean, in 8-bit levels mixed so that rounding does not show. */
    private static Layer dyed(int number, double ks) {
        SplittableRandom random = new SplittableRandom(number);
        double light = DepthOfShade.reflectance(ks);
        int[] argb = new int[SIDE * SIDE];
        for (int i = 0; i < argb.length; i++) {
            int level = SrgbCurve.encoded(light * (1 + 0.1 * random.nextGaussian()));
            argb[i] = 0xff000000 | level << 16 | 0x6080;
        }
        return new Layer(number, new ComparedPicture(argb, SIDE, SIDE), false, false);
    }

    private static List<Layer> stack(double outer, double rate, int total, double scatter) {
        SplittableRandom random = new SplittableRandom(31);
        List<Layer> layers = new ArrayList<>();
        for (int n = 1; n <= total; n++) {
            double steps = Math.min(n - 1, total - n);
            layers.add(dyed(n, outer * Math.exp(-rate * steps + scatter * random.nextGaussian())));
        }
        return layers;
    }

    @Test
    void depthFallsFromBothBoardsInwards() {
        LayerDepths depths =
                LayerStack.depths(stack(6, 0.2, 8, 0), 8, Channel.RED).value().orElseThrow();
        assertThat(depths.outer()).isCloseTo(6, within(0.1));
        assertThat(depths.layers()).extracting(LayerDepths.Depth::steps).containsExactly(0, 1, 2, 3, 3, 2, 1, 0);
        assertThat(depths.layers().get(3).ratio()).isCloseTo(Math.exp(-0.6), within(0.01));
        Decay decay = depths.decay().value().orElseThrow();
        assertThat(decay.rate()).isCloseTo(0.2, within(0.01));
        assertThat(decay.keptPerLayer()).isCloseTo(0.819, within(0.01));
        assertThat(decay.innerPaler()).isTrue();
    }

    @Test
    void scatterWidensTheIntervalAndAnEvenStackDoesNotFall() {
        Decay scattered = LayerStack.depths(stack(6, 0.2, 10, 0.1), 10, Channel.RED)
                .value()
                .flatMap(depths -> depths.decay().value())
                .orElseThrow();
        assertThat(scattered.plausible().holds(0.2)).isTrue();
        assertThat(scattered.plausible().high() - scattered.plausible().low()).isBetween(0.03, 0.3);
        assertThat(scattered.keptPerLayerPlausible().holds(Math.exp(-0.2))).isTrue();
        Decay even = LayerStack.depths(stack(6, 0, 10, 0.1), 10, Channel.RED)
                .value()
                .flatMap(depths -> depths.decay().value())
                .orElseThrow();
        assertThat(even.innerPaler()).isFalse();
    }

    @Test
    void aStackWithoutOuterLayerOrWithTooFewIsNotMeasurable() {
        List<Layer> stack = stack(6, 0.2, 8, 0);
        assertThat(LayerStack.depths(stack.subList(2, 5), 8, Channel.RED).refusal())
                .contains("no dyed outer layer")
                .contains("layer 8");
        LayerDepths two =
                LayerStack.depths(stack.subList(0, 2), 8, Channel.RED).value().orElseThrow();
        assertThat(two.decay().refusal()).contains("3 different distances").contains("here are 2");
        Layer black = new Layer(1, new ComparedPicture(new int[] {0xff000000}, 1, 1), false, false);
        assertThat(LayerStack.depths(List.of(black), 8, Channel.RED).refusal()).contains("layer 1 holds no light");
        assertThatThrownBy(() -> LayerStack.depths(stack, 6, Channel.RED)).hasMessageContaining("layer 7 beyond it");
        assertThatThrownBy(() -> LayerStack.symmetries(List.of(black, black))).hasMessageContaining("layer 1 twice");
    }

    private static Layer painted(int number, Cloths.Image image, boolean length, boolean width) {
        Cloths.Image turned = (x, y) -> image.at(width ? -x : x, length ? -y : y);
        Lab ground = new Lab(BLUE.lightness() + 5 * number, -2, -20);
        return new Layer(number, Cloths.paint(turned, SIDE, SIDE, null, ground, WHITE, 1), length, width);
    }

    @Test
    void neighboursAreAlikeOnceTheFoldsAreUndone() {
        Cloths.Image image = Cloths.blots(3, 50);
        List<Layer> layers =
                List.of(painted(1, image, false, false), painted(2, image, true, false), painted(3, image, true, true));
        List<LayerSymmetry> found = LayerStack.symmetries(layers).stream()
                .map(finding -> finding.value().orElseThrow())
                .toList();
        assertThat(found).extracting(LayerSymmetry::next).containsExactly(2, 3);
        assertThat(found).allSatisfy(two -> assertThat(two.correlation()).isGreaterThan(0.95));
        // The same picture with the wrong fold said of it is not alike.
        Layer wrong = new Layer(2, layers.get(1).picture(), false, false);
        double unlike = LayerStack.symmetries(List.of(layers.get(0), wrong))
                .get(0)
                .value()
                .orElseThrow()
                .correlation();
        assertThat(unlike).isLessThan(0.6);
    }

    @Test
    void aPanelCutOutCrookedlyIsMovedToFit() {
        Cloths.Image image = Cloths.blots(3, 50);
        Cloths.Image moved = (x, y) -> image.at(x, y - 0.08);
        LayerSymmetry two = LayerStack.symmetries(
                        List.of(painted(1, image, false, false), painted(2, moved, false, false)))
                .get(0)
                .value()
                .orElseThrow();
        assertThat(two.correlation()).isGreaterThan(0.95);
    }

    @Test
    void plainPanelsAreNotMeasurableAndGapsAreNoNeighbours() {
        Layer plain = painted(2, (x, y) -> 0, false, false);
        Layer image = painted(1, Cloths.blots(3, 50), false, false);
        assertThat(LayerStack.symmetries(List.of(plain, image)).get(0).refusal())
                .contains("layer 2 is too even")
                .contains("layers 1 and 2");
        assertThat(LayerStack.symmetries(List.of(image, painted(3, Cloths.blots(3, 50), false, false))))
                .isEmpty();
    }
}
