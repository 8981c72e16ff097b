package tenterbook.imaging.pixels;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Against {@link ExifOrientation}, whose places are checked elsewhere with real files of every orientation. */
class RgbPictureTest {
    @Property(tries = 400)
    void everyPixelLiesWhereItsOrientationPutsIt(
            @ForAll @IntRange(min = 1, max = 8) int orientation,
            @ForAll @IntRange(min = 1, max = 70) int width,
            @ForAll @IntRange(min = 1, max = 70) int height) {
        int[] stored = new int[width * height];
        ExifOrientation turn = ExifOrientation.of(orientation, width, height);
        int[] expected = new int[width * height];
        for (int i = 0; i < expected.length; i++) {
            stored[i] = i;
            expected[turn.first() + i % width * turn.along() + i / width * turn.down()] = i;
        }
        RgbPicture upright = new RgbPicture(stored, width, height).upright(orientation);
        assertThat(upright.argb()).isEqualTo(expected);
        assertThat(upright.width()).isEqualTo(turn.size().width());
        assertThat(upright.height()).isEqualTo(turn.size().height());
    }
}
