package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.imaging.SeenCloth;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.piece.PhotoRole;

/** A cloth of 1000 by 500 mm drawn on a picture of 2000 by 1600 pixels. */
class PhotographScaleTest {
    private static final double ACROSS = 2000;
    private static final double DOWN = 1600;

    /** A rectangle about the picture's middle. */
    private static SeenCloth cloth(double sidePx, double otherPx, double degrees) {
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        double[][] signs = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
        List<Corner> corners = Arrays.stream(signs)
                .map(s -> {
                    double x = s[0] * sidePx / 2;
                    double y = s[1] * otherPx / 2;
                    return new Corner(0.5 + (x * cos - y * sin) / ACROSS, 0.5 + (x * sin + y * cos) / DOWN);
                })
                .toList();
        return new SeenCloth(ClothOutline.drawn(corners), List.of());
    }

    private static PhotographScale scale(String length, String width, PhotoRole role, SeenCloth seen) {
        return PhotographScale.of(size(length), size(width), role, (int) ACROSS, (int) DOWN, seen.outline());
    }

    private static Quantity size(String text) {
        return QuantityText.read(text, Unit.CENTIMETRE);
    }

    @Test
    void theWidthOfThePictureFollowsFromBothSidesWhicheverWayTheClothLies() {
        for (double degrees : new double[] {0, 17, 45, 90, 133}) {
            PhotographScale found = scale("100", "50 cm", PhotoRole.FRONT, cloth(1200, 600, degrees));
            assertThat(found.widthMm()).as("turned by " + degrees).isCloseTo(2000 / 1.2, within(15.0));
            assertThat(found.disagreement()).isLessThan(0.02);
        }
        assertThat(scale("500 mm", "1 m", PhotoRole.BACK, cloth(1200, 600, 0)).widthMm())
                .isCloseTo(2000 / 1.2, within(1.0));
    }

    @Test
    void anOutlineOfOtherProportionsGivesNoScale() {
        assertThat(scale("100", "50", PhotoRole.FRONT, cloth(1200, 600 * 1.07, 0))
                        .known())
                .isTrue();
        assertThat(scale("100", "50", PhotoRole.FRONT, cloth(1200, 600 * 1.1, 0))
                        .known())
                .isFalse();
    }

    @Test
    void aSizeThatIsNotRecordedOrIsARangeGivesNoScale() {
        assertThat(scale("100", "48 to 52", PhotoRole.FRONT, cloth(1200, 600, 0))
                        .known())
                .isFalse();
        assertThat(scale("100", "forgot", PhotoRole.FRONT, cloth(1200, 600, 0)).known())
                .isFalse();
        assertThat(PhotographScale.of(
                                Quantity.UNRECORDED,
                                size("50"),
                                PhotoRole.FRONT,
                                2000,
                                1600,
                                cloth(1200, 600, 0).outline())
                        .known())
                .isFalse();
    }

    @Test
    void aCloseViewAndAPictureFullOfClothGiveNoScale() {
        assertThat(scale("100", "50", PhotoRole.DETAIL, cloth(1200, 600, 0)).known())
                .isFalse();
        SeenCloth full = new SeenCloth(
                new ClothOutline(
                        ClothOutline.Edge.FILLS_THE_PICTURE,
                        List.of(new Corner(0, 0), new Corner(1, 0), new Corner(1, 1), new Corner(0, 1)),
                        0.9),
                List.of());
        assertThat(scale("100", "80", PhotoRole.FRONT, full).known()).isFalse();
    }

    /** A trapezoid: the cloth seen from its foot. */
    @Test
    void aClothThatIsNoRectangleInThePictureGivesNoScale() {
        SeenCloth askew = new SeenCloth(
                ClothOutline.drawn(List.of(
                        new Corner(0.35, 0.2), new Corner(0.65, 0.2), new Corner(0.8, 0.575), new Corner(0.2, 0.575))),
                List.of());
        assertThat(scale("100", "50", PhotoRole.FRONT, askew).known()).isFalse();
    }

    @Test
    void theWordsThatNoScaleIsKnownAreNotGivenBesideOne() {
        assertThat(Denial.NO_SCALE.of(PhotographScale.UNKNOWN)).isPresent();
        assertThat(Denial.NO_SCALE.of(scale("100", "50", PhotoRole.FRONT, cloth(1200, 600, 0))))
                .isEmpty();
    }
}
