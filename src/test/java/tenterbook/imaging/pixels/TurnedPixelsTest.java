package tenterbook.imaging.pixels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Against {@link ExifOrientation}, whose places are checked elsewhere with real files of every orientation. */
class TurnedPixelsTest {
    @Property(tries = 400)
    void everyPixelLiesWhereItsOrientationPutsIt(
            @ForAll @IntRange(min = 1, max = 8) int orientation,
            @ForAll @IntRange(min = 1, max = 70) int width,
            @ForAll @IntRange(min = 1, max = 70) int height) {
        TurnedPixels turned = new TurnedPixels(width, height, orientation);
        int[] row = new int[width + 3];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                row[3 + x] = y * width + x;
            }
            turned.row(row, 3);
        }
        ExifOrientation turn = ExifOrientation.of(orientation, width, height);
        int[] expected = new int[width * height];
        for (int i = 0; i < expected.length; i++) {
            expected[turn.first() + i % width * turn.along() + i / width * turn.down()] = i;
        }
        assertThat(turned.picture().argb()).isEqualTo(expected);
        assertThat(turned.picture().width()).isEqualTo(turn.size().width());
        assertThat(turned.picture().height()).isEqualTo(turn.size().height());
    }

    @Test
    void aPictureThatIsNotAllThereIsNotGiven() {
        TurnedPixels turned = new TurnedPixels(2, 3, 6);
        turned.row(new int[2], 0);
        assertThatThrownBy(turned::picture).hasMessage("Only 1 of 3 rows were given");
    }
}
