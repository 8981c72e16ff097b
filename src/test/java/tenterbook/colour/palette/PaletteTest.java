package tenterbook.colour.palette;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Srgb;

class PaletteTest {
    private static final int BLUE = 0xff2b4a78;
    private static final int RED = 0xff96342c;
    private static final int CREAM = 0xfff2ead6;

    @Test
    void stripesOfKnownAreaComeBackWithTheirAreas() {
        int[] cloth = stripes(1000, 400, new int[] {BLUE, RED, CREAM}, new double[] {0.5, 0.2, 0.3});
        List<PaletteColour> palette = Palette.of(cloth, 1000, 400);

        assertThat(palette).hasSize(3);
        assertThat(palette).extracting(c -> c.colour().srgb()).containsExactly(rgb(BLUE), rgb(CREAM), rgb(RED));
        assertThat(palette.get(0).share()).isCloseTo(0.5, within(0.01));
        assertThat(palette.get(1).share()).isCloseTo(0.3, within(0.01));
        assertThat(palette.get(2).share()).isCloseTo(0.2, within(0.01));
    }

    @Test
    void aSmallAccentIsFoundInUnevenCloth() {
        int[] cloth = unevenly(stripes(600, 400, new int[] {BLUE, RED}, new double[] {0.97, 0.03}), 12);
        List<PaletteColour> palette = Palette.of(cloth, 600, 400);

        assertThat(palette).hasSizeLessThanOrEqualTo(4);
        PaletteColour accent = palette.stream()
                .filter(c -> Ciede2000.difference(c.colour(), rgb(RED).lab()) < 5)
                .findFirst()
                .orElseThrow();
        assertThat(accent.share()).isCloseTo(0.03, within(0.01));
    }

    @Test
    void likeColoursAreOneColourAndASpeckIsNone() {
        int nearly = 0xff2d4c7a;
        assertThat(Ciede2000.difference(rgb(BLUE).lab(), rgb(nearly).lab())).isLessThan(4);
        int[] cloth = stripes(1000, 200, new int[] {BLUE, nearly, RED}, new double[] {0.6, 0.397, 0.003});

        List<PaletteColour> palette = Palette.of(cloth, 1000, 200);
        assertThat(palette).hasSize(1);
        assertThat(palette.get(0).share()).isCloseTo(1, within(1e-9));
    }

    @Test
    void theSamePictureGivesTheSamePalette() {
        int[] cloth = unevenly(stripes(300, 300, new int[] {BLUE, RED, CREAM}, new double[] {0.4, 0.3, 0.3}), 30);
        assertThat(Palette.of(cloth, 300, 300)).isEqualTo(Palette.of(cloth.clone(), 300, 300));
    }

    @Test
    void onlyTheMarkedPartIsCounted() {
        int[] cloth = stripes(400, 400, new int[] {BLUE, RED}, new double[] {0.5, 0.5});
        List<PaletteColour> left = Palette.of(cloth, 400, 400, Region.rectangle(0, 0, 0.5, 1));
        assertThat(left).hasSize(1);
        assertThat(left.get(0).colour().srgb()).isEqualTo(rgb(BLUE));

        Region triangle =
                new Region(List.of(new Region.Corner(0, 0), new Region.Corner(1, 0), new Region.Corner(0, 1)));
        List<PaletteColour> corner = Palette.of(cloth, 400, 400, triangle);
        // Above the diagonal lie three quarters of the left half and one quarter of the right.
        assertThat(corner.get(0).share()).isCloseTo(0.75, within(0.01));
    }

    @Test
    void transparentPixelsAreNotClothAndNothingCountedIsAnEmptyPalette() {
        int[] cloth = stripes(100, 100, new int[] {BLUE, 0x00ffffff}, new double[] {0.5, 0.5});
        assertThat(Palette.of(cloth, 100, 100)).hasSize(1);
        assertThat(Palette.of(new int[100], 10, 10)).isEmpty();
    }

    @Test
    void aPictureThatDoesNotFitItsSizeIsRefused() {
        assertThatThrownBy(() -> Palette.of(new int[99], 10, 10)).hasMessageContaining("10 × 10");
    }

    @Property(tries = 60)
    void sharesSumToOneAndFallInOrder(
            @ForAll @IntRange(min = 1, max = 60) int width,
            @ForAll @IntRange(min = 1, max = 60) int height,
            @ForAll long seed) {
        int[] noise = new Random(seed)
                .ints(width * height, 0, 1 << 24)
                .map(p -> p | 0xff000000)
                .toArray();
        List<PaletteColour> palette = Palette.of(noise, width, height);

        assertThat(palette).isNotEmpty().hasSizeLessThanOrEqualTo(Palette.MOST);
        assertThat(palette.stream().mapToDouble(PaletteColour::share).sum()).isCloseTo(1, within(1e-9));
        for (int i = 1; i < palette.size(); i++) {
            assertThat(palette.get(i).share())
                    .isLessThanOrEqualTo(palette.get(i - 1).share());
        }
    }

    @Test
    void aRegionsColourIsItsMeanAndGlintsDoNotPullIt() {
        int[] cloth = new int[10_000];
        Arrays.fill(cloth, BLUE);
        for (int i = 0; i < cloth.length; i += 20) {
            cloth[i] = 0xffffffff;
        }
        RegionColour found = RegionColour.of(cloth, 100, 100, Region.rectangle(0.1, 0.1, 0.9, 0.9));
        assertThat(found.pixels()).isEqualTo(6400);
        assertThat(Ciede2000.difference(found.mean(), rgb(BLUE).lab())).isLessThan(1e-6);
        assertThat(found.spread()).isLessThan(1e-6);
    }

    @Test
    void anUnevenRegionHasALargerSpread() {
        int[] even = unevenly(stripes(200, 200, new int[] {BLUE}, new double[] {1}), 4);
        int[] uneven = unevenly(stripes(200, 200, new int[] {BLUE}, new double[] {1}), 40);
        RegionColour one = RegionColour.of(even, 200, 200, Region.WHOLE);
        RegionColour other = RegionColour.of(uneven, 200, 200, Region.WHOLE);
        assertThat(other.spread()).isGreaterThan(2 * one.spread());
        assertThat(Ciede2000.difference(one.mean(), rgb(BLUE).lab())).isLessThan(0.5);
    }

    @Test
    void aRegionWithoutPixelsIsRefused() {
        assertThatThrownBy(() -> RegionColour.of(new int[] {BLUE, BLUE}, 2, 1, Region.rectangle(0.3, 0.1, 0.4, 0.2)))
                .hasMessageContaining("covers no pixel");
        assertThatThrownBy(() -> new Region(List.of())).hasMessageContaining("three corners");
        assertThatThrownBy(() -> Region.rectangle(0, 0, 1.1, 1)).hasMessageContaining("1.1");
    }

    private static Srgb rgb(int packed) {
        return Srgb.ofRgb(packed);
    }

    private static int[] stripes(int width, int height, int[] colours, double[] shares) {
        int[] argb = new int[width * height];
        for (int x = 0; x < width; x++) {
            int stripe = 0;
            for (double end = shares[0]; (x + 0.5) / width > end && stripe < colours.length - 1; ) {
                end += shares[++stripe];
            }
            for (int y = 0; y < height; y++) {
                argb[y * width + x] = colours[stripe];
            }
        }
        return argb;
    }

    /** Lighter and darker by up to {@code range} steps, as uneven dyeing and weave do. */
    private static int[] unevenly(int[] argb, int range) {
        Random random = new Random(7);
        for (int i = 0; i < argb.length; i++) {
            int by = random.nextInt(2 * range + 1) - range;
            int out = 0xff;
            for (int shift = 16; shift >= 0; shift -= 8) {
                out = out << 8 | Math.max(0, Math.min(255, (argb[i] >> shift & 0xff) + by));
            }
            argb[i] = out;
        }
        return argb;
    }
}
