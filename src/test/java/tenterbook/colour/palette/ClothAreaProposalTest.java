package tenterbook.colour.palette;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tenterbook.colour.palette.ClothArea.Part;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.Srgb;

class ClothAreaProposalTest {
    private static final int WIDTH = 960;
    private static final int HEIGHT = 720;
    private static final Lab LINEN = new Lab(80, 1, 9);
    private static final Lab INDIGO = new Lab(40, -4, -24);
    private static final Lab UNDYED = new Lab(89, 0, 6);
    private static final Lab LAC = new Lab(42, 43, 5);
    private static final Region CLOTH = Region.rectangle(0.1, 0.06, 0.8, 0.76);
    private static final Region CARD = Region.rectangle(0.82, 0.82, 0.97, 0.95);

    @Test
    void groundResistAndLocalColourComeBackWithTheirSharesAndColours() {
        Pixels picture = clothOnLinen();
        List<ClothArea> areas = ClothAreaProposal.find(picture, CLOTH, List.of(CARD));

        assertThat(areas).extracting(ClothArea::part).containsExactly(Part.GROUND, Part.RESIST, Part.LOCAL);
        near(areas.get(0), INDIGO, 0.827);
        near(areas.get(1), UNDYED, 0.121);
        near(areas.get(2), LAC, 0.053);
        assertThat(areas.stream().mapToDouble(ClothArea::share).sum()).isCloseTo(1, within(1e-9));
        for (ClothArea area : areas) {
            RegionColour inside = RegionColour.of(picture.argb(), WIDTH, HEIGHT, area.sample());
            assertThat(Ciede2000.difference(inside.mean(), area.mean()))
                    .as("%s", area)
                    .isLessThan(1.5);
            assertThat(inside.pixels()).isGreaterThan(300);
        }
    }

    @Test
    void aClothThatFillsThePictureNeedsNoBackdrop() {
        Pixels picture = painted((x, y) -> (int) (x * 12) % 3 == 0 ? UNDYED : INDIGO);
        List<ClothArea> areas = ClothAreaProposal.find(picture, Region.WHOLE, List.of());
        assertThat(areas).extracting(ClothArea::part).containsExactly(Part.GROUND, Part.RESIST);
        assertThat(areas.get(1).share()).isCloseTo(1 / 3.0, within(0.02));
    }

    @Test
    void aClothThatIsMostlyResistStillHasItsDyedPartForGround() {
        Pixels picture = painted((x, y) -> (int) (x * 12) % 4 == 0 ? INDIGO : UNDYED);
        List<ClothArea> areas = ClothAreaProposal.find(picture, Region.WHOLE, List.of());
        assertThat(areas).extracting(ClothArea::part).containsExactly(Part.RESIST, Part.GROUND);
    }

    @Test
    void whatIsLeftOutIsNotCounted() {
        Pixels picture = painted((x, y) -> CARD.contains(x, y) ? new Lab(50, 0, 0) : INDIGO);
        assertThat(ClothAreaProposal.find(picture, Region.WHOLE, List.of(CARD))).hasSize(1);
        assertThat(ClothAreaProposal.find(picture, Region.WHOLE, List.of())).hasSize(2);
    }

    @Test
    void anOutlineTooSmallForAnyCellGivesNoArea() {
        Region speck = Region.rectangle(0.1, 0.1, 0.1005, 0.1005);
        assertThat(ClothAreaProposal.find(painted((x, y) -> LINEN), speck, List.of()))
                .isEmpty();
        assertThat(ClothAreaProposal.find(new Pixels(new int[] {0xff808080}, 1, 1), speck, List.of()))
                .isEmpty();
    }

    @Test
    void aLassoWithBaysMeasuresOnlyWhatItEncloses() {
        // A comb: three teeth over the red stripes, its bays over the blue ones.
        Lab red = new Lab(40, 45, 30);
        Pixels stripes = painted((x, y) -> (int) (x * 6) % 2 == 0 ? red : INDIGO);
        List<Corner> comb = new ArrayList<>(List.of(new Corner(0.02, 0.1)));
        for (int tooth = 0; tooth < 3; tooth++) {
            double left = tooth / 3.0 + 0.02;
            comb.add(new Corner(left, 0.9));
            comb.add(new Corner(left + 0.12, 0.9));
            comb.add(new Corner(left + 0.12, 0.104));
            if (tooth < 2) {
                comb.add(new Corner(left + 1 / 3.0, 0.104));
            }
        }
        comb.add(new Corner(2 / 3.0 + 0.14, 0.1));
        RegionColour inside = RegionColour.of(stripes.argb(), WIDTH, HEIGHT, new Region(comb));
        assertThat(Ciede2000.difference(inside.mean(), red)).isLessThan(1);
        RegionColour box = RegionColour.of(stripes.argb(), WIDTH, HEIGHT, Region.rectangle(0.02, 0.1, 0.98, 0.9));
        assertThat(Ciede2000.difference(box.mean(), red))
                .as("its box holds blue too")
                .isGreaterThan(10);
    }

    /** Shares: dots of radius 0.03 to 0.06 of the width on a cloth of 0.7 by 0.7; worked out by counting pixels. */
    private static Pixels clothOnLinen() {
        return painted((x, y) -> {
            if (CARD.contains(x, y)) {
                return new Lab(50, 0, 0);
            }
            if (x < 0.1 || x > 0.8 || y < 0.06 || y > 0.76) {
                double shadow = x > 0.8 && x < 0.84 && y < 0.76 ? 14 * (1 - (x - 0.8) / 0.04) : 0;
                return new Lab(LINEN.lightness() - shadow, LINEN.a(), LINEN.b());
            }
            double cx = Math.floor((x - 0.1) / 0.14);
            double cy = Math.floor((y - 0.06) / 0.14);
            double r = Math.hypot(x - 0.1 - 0.14 * cx - 0.07, y - 0.06 - 0.14 * cy - 0.07);
            boolean lac = cx == 2 || (cx == 4 && cy < 1);
            return r > (lac ? 0.037 : 0.0315) ? INDIGO : lac ? LAC : UNDYED;
        });
    }

    private static void near(ClothArea area, Lab colour, double share) {
        assertThat(Ciede2000.difference(area.mean(), colour)).as("%s", area).isLessThan(1.5);
        assertThat(area.share()).as("%s", area).isCloseTo(share, within(0.02));
    }

    private interface Paint {
        Lab at(double x, double y);
    }

    private static Pixels painted(Paint paint) {
        Random random = new Random(5);
        int[] argb = new int[WIDTH * HEIGHT];
        for (int i = 0; i < argb.length; i++) {
            Srgb colour = paint.at((i % WIDTH + 0.5) / WIDTH, (i / WIDTH + 0.5) / HEIGHT)
                    .srgb();
            int by = (int) Math.round(2 * random.nextGaussian());
            argb[i] = 0xff000000
                    | level(colour.red() + by) << 16
                    | level(colour.green() + by) << 8
                    | level(colour.blue() + by);
        }
        return new Pixels(argb, WIDTH, HEIGHT);
    }

    private static int level(int value) {
        return Math.max(0, Math.min(255, value));
    }
}
