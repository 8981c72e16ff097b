package tenterbook.imaging;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.palette.Palette;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.RegionColour;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.target.CardFinder;
import tenterbook.colour.target.Correction;
import tenterbook.imaging.cloth.ClothFinder;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.imaging.cloth.MatchingPart;

/** A card on the cloth, and where the cloth has a colour. */
class SeenClothTest {
    /** Blue cloth, pale in its right third, with a grey card on it. */
    private static Pixels cloth(int grey) {
        int width = 900;
        int height = 600;
        SplittableRandom random = new SplittableRandom(3);
        int[] argb = new int[width * height];
        for (int i = 0; i < argb.length; i++) {
            int x = i % width;
            int y = i / width;
            boolean card = x >= 90 && x < 270 && y >= 90 && y < 210;
            int grain = card ? 0 : random.nextInt(21) - 10;
            int rgb = card ? grey * 0x010101 : x < 600 ? 0x345a94 : 0xd8d2c4;
            argb[i] = 0xff000000 | rgb + grain * 0x010101;
        }
        return new Pixels(argb, width, height);
    }

    private static boolean holdsGrey(SeenCloth seen) {
        return seen.palette().stream().map(PaletteColour::colour).anyMatch(colour -> colour.chroma() < 4);
    }

    @Test
    void aGreyCardOnTheClothIsNoCloth() {
        List<Region.Corner> all = Region.WHOLE.corners();
        Region card = Region.rectangle(0.1, 0.15, 0.3, 0.35);
        assertThat(holdsGrey(SeenCloth.look(cloth(119), all, List.of()))).isFalse();
        // So pale a card is not surely one; only a person's mark tells.
        assertThat(holdsGrey(SeenCloth.look(cloth(200), all, List.of()))).isTrue();
        SeenCloth marked = SeenCloth.look(cloth(200), all, List.of(card));
        assertThat(holdsGrey(marked)).isFalse();
        assertThat(marked.outline().edge()).isEqualTo(Edge.DRAWN);
        assertThat(marked.palette()).hasSizeBetween(2, 3);
    }

    @Test
    void aGreyCardThatNobodyMarkedIsFoundOnAPhotographThatIsAllCloth() throws IOException {
        Path original = Files.walk(Path.of("sample-archive/data/photos"))
                .filter(file -> file.getFileName().toString().startsWith("2675496346"))
                .findFirst()
                .orElseThrow();
        Pixels picture = PhotoMeasure.opened(original).orElseThrow().pixels();
        SeenCloth seen = SeenCloth.look(picture, List.of(), List.of());
        assertThat(seen.outline().edge()).isEqualTo(Edge.FILLS_THE_PICTURE);
        Lab card = RegionColour.of(
                        picture.argb(),
                        picture.width(),
                        picture.height(),
                        CardFinder.find(picture).orElseThrow().outline().inner())
                .mean();
        assertThat(least(card, Palette.of(LabRaster.of(picture, ClothFinder.LONG_EDGE), Region.WHOLE)))
                .as("with the card")
                .isLessThan(5);
        assertThat(least(card, seen.palette())).as("without it").isGreaterThan(8);
    }

    private static double least(Lab colour, List<PaletteColour> palette) {
        return palette.stream()
                .mapToDouble(each -> Ciede2000.difference(colour, each.colour()))
                .min()
                .orElseThrow();
    }

    @Test
    void thePartWithTheColourIsOutlinedWithinTheClothAlone() {
        Pixels picture = cloth(119);
        Region left = Region.rectangle(0, 0, 0.5, 1);
        SeenCloth seen = SeenCloth.look(picture, Region.WHOLE.corners(), List.of());
        LabRaster raster = LabRaster.of(picture, MatchingPart.LONG_EDGE);
        Lab blue = new Lab(38, 5, -35);
        MatchingPart part = MatchingPart.of(raster, Region.WHOLE, seen.palette(), Correction.NONE, List.of(blue), 10);
        assertThat(part.contains(0.5, 0.5)).isTrue();
        assertThat(part.contains(0.9, 0.5)).isFalse();
        assertThat(part.share()).isBetween(0.62, 0.68);
        MatchingPart half = MatchingPart.of(raster, left, seen.palette(), Correction.NONE, List.of(blue), 10);
        assertThat(half.contains(0.6, 0.5)).as("outside the outline").isFalse();
        assertThat(half.share()).isBetween(0.45, 0.51);
        MatchingPart cells = MatchingPart.of(raster, Region.WHOLE, List.of(), Correction.NONE, List.of(blue), 12);
        assertThat(cells.share()).as("cell by cell").isBetween(0.58, 0.66);
        MatchingPart none = MatchingPart.of(
                raster, Region.WHOLE, seen.palette(), Correction.NONE, List.of(new Lab(50, 60, 40)), 10);
        assertThat(none.share()).isZero();
        assertThat(MatchingPart.svg(List.of(none))).contains("d=\"\"");
        assertThat(MatchingPart.svg(List.of(part)))
                .startsWith("<svg")
                .contains("M")
                .doesNotContain("NaN");
    }
}
