package tenterbook.colour.target;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;

class CardFinderTest {
    private static final Lab LINEN = new Lab(82, 1, 8);
    private static final Lab BLUE = new Lab(44, -4, -21);
    private static final Lab GREY = KnownCard.grey18().lab();

    @ParameterizedTest
    @CsvSource({"0,1,1,1", "7,1.09,1,0.86", "-12,0.8,0.8,0.8", "30,0.9,1,1.15"})
    void aCardIsFoundWithinTwoPixelsWhateverItsTurnAndTheCast(double degrees, double r, double g, double b) {
        Region card = card(1320, 1000, 170, 110, degrees);
        Pixels picture = scene().paint(card, GREY).seen(CardScene.gains(r, g, b), 1.3);
        CardFinder.Found found = CardFinder.find(picture).orElseThrow();
        assertThat(furthest(found.outline().corners(), card.corners())).isLessThan(2);
        assertThat(CardReading.of(picture, found.outline().inner()).fault()).isEmpty();
    }

    @Test
    void aCardSeenAslantIsFoundWithItsOwnFourCorners() {
        Region card = new Region(List.of(corner(200, 900), corner(380, 930), corner(360, 1060), corner(170, 1010)));
        Pixels picture = scene().paint(card, GREY).seen(CardScene.gains(1, 1, 1), 1.3);
        assertThat(furthest(CardFinder.find(picture).orElseThrow().outline().corners(), card.corners()))
                .isLessThan(2.5);
    }

    @Test
    void aPictureWithoutACardHasNone() {
        assertThat(CardFinder.find(scene().seen(CardScene.gains(1, 1, 1), 1.3))).isEmpty();
        Pixels bare = new CardScene(800, 600, LINEN).seen(CardScene.gains(1, 1, 1), 1.3);
        assertThat(CardFinder.find(bare)).isEmpty();
        Pixels grey = new CardScene(800, 600, GREY).seen(CardScene.gains(1, 1, 1), 1.3);
        assertThat(CardFinder.find(grey)).as("a grey wall is no card").isEmpty();
        assertThat(CardFinder.NONE_FOUND.inEnglish())
                .startsWith("No card was found")
                .contains("Mark its four corners by hand");
    }

    @Test
    void greyThingsOfAnotherShapeAreNoCard() {
        CardScene scene = scene();
        disc(scene, 300, 950, 80);
        scene.paint(Region.rectangle(0.7, 0.9, 0.95, 0.93), GREY);
        scene.paint(
                new Region(List.of(
                        corner(1200, 900),
                        corner(1400, 900),
                        corner(1400, 940),
                        corner(1260, 940),
                        corner(1260, 1040),
                        corner(1200, 1040))),
                GREY);
        scene.paint(card(1320, 150, 170, 110, 0), new Lab(50, 40, 10));
        assertThat(CardFinder.all(scene.seen(CardScene.gains(1, 1, 1), 1.3))).isEmpty();
    }

    @Test
    void noiseAndWildColoursGiveNoCard() {
        Random random = new Random(3);
        int[] argb = random.ints(640 * 480, 0, 1 << 24).map(p -> p | 0xff000000).toArray();
        assertThat(CardFinder.find(new Pixels(argb, 640, 480))).isEmpty();
        assertThat(CardFinder.find(new Pixels(new int[] {0xff777777}, 1, 1))).isEmpty();
    }

    private static CardScene scene() {
        return new CardScene(1600, 1200, LINEN)
                .shade(Region.WHOLE, (x, y, old) -> old.times(1.05 - 0.1 * x - 0.06 * y))
                .shade(
                        Region.rectangle(0.1, 0.08, 0.85, 0.72),
                        (x, y, old) -> LinearRgb.of(BLUE).times(1 + 0.12 * Math.sin(40 * x) * Math.cos(60 * y)));
    }

    private static void disc(CardScene scene, double x, double y, double radius) {
        scene.shade(
                Region.WHOLE,
                (u, v, old) -> Math.hypot(u * 1600 - x, v * 1200 - y) < radius ? LinearRgb.of(GREY) : old);
    }

    private static Region card(double x, double y, double w, double h, double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        double[][] offsets = {{-w, -h}, {w, -h}, {w, h}, {-w, h}};
        return new Region(java.util.Arrays.stream(offsets)
                .map(o -> corner(x + (o[0] * c - o[1] * s) / 2, y + (o[0] * s + o[1] * c) / 2))
                .toList());
    }

    private static Corner corner(double x, double y) {
        return new Corner(x / 1600, y / 1200);
    }

    /** Pixels from each true corner to its nearest found one, the largest. */
    private static double furthest(List<Corner> found, List<Corner> truth) {
        return truth.stream()
                .mapToDouble(t -> found.stream()
                        .mapToDouble(f -> Math.hypot((f.x() - t.x()) * 1600, (f.y() - t.y()) * 1200))
                        .min()
                        .orElseThrow())
                .max()
                .orElseThrow();
    }
}
