package tenterbook.imaging;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.imaging.decoder.DecoderBounds;
import tenterbook.imaging.decoder.InstalledDecoders;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.imaging.pixels.PhotoReader;

/** Flipped bytes anywhere: a photograph is kept, perhaps without previews, or refused in words; nothing else happens. */
class DamagedPhotoTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"jpeg", "png", "tiff", "corners.heic", "corners.avif", "corners-lossy.webp"})
    void flippedBytesAreKeptOrRefusedInWords(String what) throws IOException {
        Originals originals = new Originals(folder.resolve("photos"));
        // Without an installed decoder, which is a process for each picture: HeifTest damages some for it.
        PhotoReader reader = new PhotoReader(new InstalledDecoders(List.of(), DecoderBounds.USUAL));
        PhotoIntake intake = new PhotoIntake(
                originals,
                new Previews(folder.resolve("previews"), originals, reader),
                new ClothTable(folder.resolve("photos"), null),
                reader);
        byte[] whole = what.contains(".")
                ? Corners.fixture(what)
                : Corners.encoded(Corners.image(48, 32, BufferedImage.TYPE_INT_RGB), what);
        if (what.equals("jpeg")) {
            whole = new ExifBytes()
                    .orientation(6)
                    .camera("Sarelho", "Two")
                    .coordinates(38, 9)
                    .in(whole);
            whole = ExifBytes.withProfile(whole, ProfileBytes.likeAdobeRgb());
        }
        Random random = new Random(20);
        int kept = 0;
        for (int round = 0; round < 60; round++) {
            byte[] damaged = whole.clone();
            for (int flips = 1 + random.nextInt(4); flips > 0; flips--) {
                damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
            }
            try {
                Photo photo = intake.take(new ByteArrayInputStream(damaged), "damaged");
                assertThat(originals.find(photo.digest()).orElseThrow()).hasBinaryContent(damaged);
                assertThat(photo.viewable() || !photo.notes().isEmpty())
                        .as("a photograph that cannot be shown says why")
                        .isTrue();
                kept++;
            } catch (PhotoRefused refused) {
                assertThat(refused).hasMessageContaining("Nothing in the archive has changed");
            }
        }
        assertThat(kept).isPositive();
    }
}
