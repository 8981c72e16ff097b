package tenterbook.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.GpsDirectory;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.record.PhotoRecords;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Srgb;
import tenterbook.imaging.decoder.DecoderBounds;
import tenterbook.imaging.decoder.InstalledDecoders;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.imaging.pixels.PhotoReader;

class PhotoIntakeTest {
    @TempDir
    Path folder;

    private Originals originals;
    private Previews previews;
    private PhotoIntake intake;

    @BeforeEach
    void open() throws IOException {
        originals = new Originals(folder.resolve("photos"));
        previews = new Previews(folder.resolve("previews"), originals);
        intake = new PhotoIntake(originals, previews, new ClothTable(folder.resolve("photos"), null));
    }

    @Test
    void aPhonesPhotographComesOutUprightWithItsFactsAndColours() throws IOException {
        byte[] jpeg = phonePhoto(2600, 1300);
        Photo photo = take(jpeg, "C:\\camera\\IMG_0001.JPG");

        assertThat(photo.originalName()).isEqualTo("IMG_0001.JPG");
        assertThat(photo.mediaType()).isEqualTo("image/jpeg");
        assertThat(photo.width()).isEqualTo(1300);
        assertThat(photo.height()).isEqualTo(2600);
        assertThat(photo.taken()).isEqualTo("2024-05-17T14:03:22+01:00");
        assertThat(photo.gps()).isTrue();
        assertThat(photo.viewable()).isTrue();
        assertThat(photo.notes()).isEmpty();
        assertThat(photo.calibration()).isEqualTo("uncalibrated");
        assertThat(photo.palette()).hasSize(4);
        assertThat(photo.palette())
                .allSatisfy(colour -> assertThat(colour.share()).isCloseTo(0.25, within(0.01)));
        assertHolds(photo.palette(), Corners.UPPER_LEFT);
        assertHolds(photo.palette(), Corners.LOWER_RIGHT);
        assertThat(originals.find(photo.digest()).orElseThrow()).hasBinaryContent(jpeg);
    }

    @Test
    void whatAFileDoesNotSayOfItselfIsEmptyTextAndNeverStored() throws IOException {
        BufferedImage plain = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
        Photo photo = take(Corners.encoded(plain, "png"), null);
        assertThat(List.of(photo.originalName(), photo.taken(), photo.camera(), photo.lens(), photo.iccProfile()))
                .containsOnly("");
        assertThat(PhotoRecords.PHOTO.toJson(photo).fieldNames())
                .toIterable()
                .contains("digest", "mediaType")
                .doesNotContain("originalName", "taken", "camera", "lens", "iccProfile");
    }

    @Test
    void previewsHaveTheirSizesAndSurviveTheirDeletion() throws IOException {
        Photo photo = take(phonePhoto(2600, 1300), "a.jpg");
        for (PreviewSize size : PreviewSize.values()) {
            Path file = previews.get(photo.digest(), size).orElseThrow();
            byte[] first = Files.readAllBytes(file);
            BufferedImage image = ImageIO.read(file.toFile());
            assertThat(image.getHeight()).isEqualTo(size.longEdge());
            assertThat(image.getWidth()).isEqualTo(size.longEdge() / 2);
            // Stored upper left goes upper right at orientation 6.
            assertNear(image.getRGB(image.getWidth() - 4, 3), Corners.UPPER_LEFT);
            assertNear(image.getRGB(3, 3), Corners.LOWER_LEFT);

            Files.delete(file);
            assertThat(previews.get(photo.digest(), size).orElseThrow()).hasBinaryContent(first);
        }
    }

    @Test
    void anEmptyPreviewCountsAsMissing() throws IOException {
        Photo photo = take(phonePhoto(64, 32), "a.jpg");
        Path file = previews.get(photo.digest(), PreviewSize.SMALL).orElseThrow();
        Files.write(file, new byte[0]);
        assertThat(previews.get(photo.digest(), PreviewSize.SMALL).orElseThrow())
                .isNotEmptyFile();
    }

    @Test
    void aSmallPictureIsNeverEnlarged() throws IOException {
        Photo photo = take(phonePhoto(400, 200), "a.jpg");
        assertThat(ImageIO.read(previews.get(photo.digest(), PreviewSize.LARGE)
                                .orElseThrow()
                                .toFile())
                        .getHeight())
                .isEqualTo(400);
        assertThat(ImageIO.read(previews.get(photo.digest(), PreviewSize.SMALL)
                                .orElseThrow()
                                .toFile())
                        .getHeight())
                .isEqualTo(320);
    }

    @Test
    void noPreviewCarriesMetadata() throws Exception {
        Photo photo = take(phonePhoto(2600, 1300), "a.jpg");
        List<byte[]> copies = new ArrayList<>();
        for (PreviewSize size : PreviewSize.values()) {
            copies.add(Files.readAllBytes(previews.get(photo.digest(), size).orElseThrow()));
        }

        for (byte[] copy : copies) {
            var metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(copy));
            assertThat(metadata.containsDirectoryOfType(GpsDirectory.class)).isFalse();
            assertThat(metadata.containsDirectoryOfType(ExifDirectoryBase.class))
                    .isFalse();
            assertThat(new String(copy, java.nio.charset.StandardCharsets.ISO_8859_1))
                    .doesNotContain("Exif");
        }
    }

    @Test
    void fineWeaveKeepsItsMeanLightWhenReduced() throws IOException {
        BufferedImage weave = new BufferedImage(1280, 1280, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 1280 * 1280; i++) {
            weave.setRGB(i % 1280, i / 1280, (i % 1280 + i / 1280) % 2 == 0 ? 0xffffff : 0);
        }
        Photo photo = take(Corners.encoded(weave, "png"), "weave.png");
        BufferedImage small = ImageIO.read(
                previews.get(photo.digest(), PreviewSize.SMALL).orElseThrow().toFile());
        // Half the light, encoded by IEC 61966-2-1, is level 188.
        assertThat(small.getRGB(100, 100) & 0xff).isCloseTo(188, within(2));
    }

    @Test
    void aSeeThroughPictureLiesOnWhiteAndItsPaletteIsOfTheOpaquePart() throws IOException {
        BufferedImage cut = new BufferedImage(100, 100, BufferedImage.TYPE_INT_ARGB);
        for (int i = 0; i < 5000; i++) {
            cut.setRGB(i % 50, i / 50, 0xff000000 | Corners.LOWER_LEFT);
        }
        Photo photo = take(Corners.encoded(cut, "png"), "cut.png");
        assertThat(photo.palette()).hasSize(1);
        assertNear(photo.palette().get(0).colour().srgb(), Corners.LOWER_LEFT);
        BufferedImage small = ImageIO.read(
                previews.get(photo.digest(), PreviewSize.SMALL).orElseThrow().toFile());
        assertThat(small.getRGB(90, 50) & 0xff).isGreaterThan(252);
    }

    @Test
    void aHeicPhotographIsKeptThoughItCannotBeShownAndIsShownOnceADecoderIsThere() throws IOException {
        PhotoReader without = new PhotoReader(new InstalledDecoders(List.of(), DecoderBounds.USUAL));
        ClothTable cloths = new ClothTable(folder.resolve("photos"), null);
        Previews none = new Previews(folder.resolve("previews"), originals, without);
        byte[] heic = Corners.fixture("corners.heic");
        Photo photo =
                new PhotoIntake(originals, none, cloths, without).take(new ByteArrayInputStream(heic), "IMG_2.HEIC");
        assertThat(photo.viewable()).isFalse();
        assertThat(photo.palette()).isEmpty();
        assertThat(photo.notes()).singleElement().asString().contains("HEIC pictures are kept");
        assertThat(none.get(photo.digest(), PreviewSize.SMALL)).isEmpty();
        assertThat(originals.find(photo.digest()).orElseThrow()).hasBinaryContent(heic);

        assumeTrue(
                InstalledDecoders.here().find().isPresent(), "no decoder of HEIC pictures (libheif) on this computer");
        Photo again = intake.again(photo).orElseThrow();
        assertThat(again.viewable()).isTrue();
        assertThat(again.originalName()).isEqualTo("IMG_2.HEIC");
        assertThat(again.palette())
                .anySatisfy(colour -> assertNear(colour.colour().srgb(), Corners.UPPER_LEFT))
                .anySatisfy(colour -> assertNear(colour.colour().srgb(), Corners.LOWER_RIGHT));
        assertThat(again.notes()).singleElement().asString().startsWith("Decoded by ");
        assertThat(previews.get(photo.digest(), PreviewSize.SMALL)).isPresent();
        assertThat(originals.find(photo.digest()).orElseThrow()).hasBinaryContent(heic);
    }

    @Test
    void theSamePhotographTwiceGivesTheSameRecord() throws IOException {
        byte[] jpeg = phonePhoto(500, 300);
        assertThat(take(jpeg, "a.jpg")).isEqualTo(take(jpeg, "a.jpg"));
    }

    @Test
    void aRefusedFileLeavesNoPreviewEither() throws IOException {
        assertThatThrownBy(() -> take("not a picture".getBytes(java.nio.charset.StandardCharsets.UTF_8), "a.jpg"))
                .isInstanceOf(PhotoRefused.class);
        try (var files = Files.walk(folder.resolve("previews"))) {
            assertThat(files.filter(Files::isRegularFile)).isEmpty();
        }
    }

    @Test
    void severalAtOnceDoNotDisturbEachOther() throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(4);
        try {
            List<Future<Photo>> taken = new ArrayList<>();
            for (int i = 0; i < 24; i++) {
                byte[] jpeg = phonePhoto(400 + 10 * (i % 6), 300);
                taken.add(pool.submit(() -> take(jpeg, "a.jpg")));
            }
            for (int i = 0; i < 24; i++) {
                assertThat(taken.get(i).get()).isEqualTo(taken.get(i % 6).get());
                assertThat(taken.get(i).get().height()).isEqualTo(400 + 10 * (i % 6));
            }
        } finally {
            pool.shutdownNow();
        }
        assertThat(originals.all()).hasSize(6);
    }

    private Photo take(byte[] bytes, String name) throws IOException {
        return intake.take(new ByteArrayInputStream(bytes), name);
    }

    private static byte[] phonePhoto(int width, int height) throws IOException {
        return new ExifBytes()
                .orientation(6)
                .camera("Sarelho", "Two")
                .taken("2024:05:17 14:03:22", "+01:00")
                .coordinates(38, 9)
                .in(Corners.jpeg(width, height));
    }

    private static void assertHolds(List<PaletteColour> palette, int rgb) {
        assertThat(palette).anySatisfy(colour -> assertNear(colour.colour().srgb(), rgb));
    }

    private static void assertNear(int found, int expected) {
        assertNear(Srgb.ofRgb(found), expected);
    }

    private static void assertNear(Srgb found, int expected) {
        assertThat(Ciede2000.difference(found.lab(), Srgb.ofRgb(expected).lab()))
                .as("%s against %06x", found.hex(), expected)
                .isLessThan(3.5);
    }
}
