package tenterbook.imaging.pixels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Srgb;
import tenterbook.imaging.Corners;
import tenterbook.imaging.decoder.DecoderBounds;
import tenterbook.imaging.decoder.InstalledDecoders;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoFacts;
import tenterbook.imaging.file.PhotoFactsReader;

/** HEIC and AVIF by a decoder installed on the computer; by a false one where its bounds are to be reached. */
class HeifTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"corners.heic, HEIC", "corners.avif, AVIF"})
    void theColoursAreThoseThatWereDrawn(String name, MediaType type) throws IOException {
        needsADecoder();
        PhotoReader.Reading reading = read(new PhotoReader(), Corners.fixture(name), type);
        assertThat(reading.width()).isEqualTo(128);
        assertThat(reading.height()).isEqualTo(64);
        assertNear(at(reading, 0.1, 0.1), Corners.UPPER_LEFT);
        assertNear(at(reading, 0.9, 0.1), Corners.UPPER_RIGHT);
        assertNear(at(reading, 0.1, 0.9), Corners.LOWER_LEFT);
        assertNear(at(reading, 0.9, 0.9), Corners.LOWER_RIGHT);
        assertThat(reading.notes()).singleElement().asString().matches("Decoded by [a-z-]+ \\d[\\d.]*, .*");
    }

    /** ISO/IEC 23008-12: irot 3 turns a quarter clockwise, so the stored lower left comes to the upper left; EXIF is not added. */
    @Test
    void aPhonesGridIsWholeAndTurnedOnce() throws IOException {
        byte[] grid = Corners.fixture("grid.heic");
        PhotoFacts facts = PhotoFactsReader.read(Files.write(folder.resolve("facts"), grid));
        assertThat(facts.width()).isEqualTo(120);
        assertThat(facts.height()).isEqualTo(100);
        assertThat(facts.orientation()).isEqualTo(6);
        assertThat(facts.takenLocal()).isEqualTo("2024-05-06T07:08:09");

        needsADecoder();
        PhotoReader.Reading reading = read(new PhotoReader(), grid, MediaType.HEIC);
        assertThat(reading.width()).isEqualTo(100);
        assertThat(reading.height()).isEqualTo(120);
        assertThat(reading.sizes().get(0).width()).isEqualTo(100);
        assertNear(at(reading, 0.1, 0.1), Corners.LOWER_LEFT);
        assertNear(at(reading, 0.9, 0.1), Corners.UPPER_LEFT);
        assertNear(at(reading, 0.1, 0.9), Corners.LOWER_RIGHT);
        assertNear(at(reading, 0.9, 0.9), Corners.UPPER_RIGHT);
    }

    /**
     * Example pictures of libheif, see ORIGIN.txt beside them. The sides are those that heif-info 1.15.1 prints; the means of the four quarters are
     * ImageMagick's (6.9.11, box filter) from what heif-convert 1.15.1 wrote. The second picture in the HEIC file has others.
     */
    @ParameterizedTest
    @CsvSource({
        "example.heic, HEIC, 1280, 854, 9BAEC2, 8B9BA5, 4E4939, 766742",
        "example.avif, AVIF, 800, 533, 626543, C0C5C2, 5C5D47, 66664B"
    })
    void picturesThatOthersMadeAreShownAndMeasured(
            String name, MediaType type, int width, int height, String a, String b, String c, String d)
            throws IOException {
        byte[] bytes = Corners.fixture(name);
        PhotoFacts facts = PhotoFactsReader.read(Files.write(folder.resolve("facts"), bytes));
        assertThat(facts.width()).isEqualTo(width);
        assertThat(facts.height()).isEqualTo(height);
        needsADecoder();
        PhotoReader.Reading reading = read(new PhotoReader(), bytes, type);
        assertThat(reading.width()).isEqualTo(width);
        assertThat(reading.height()).isEqualTo(height);
        assertThat(reading.measured()).isPresent();
        RgbPicture shown = reading.sizes().get(0);
        assertThat(shown.width()).isEqualTo(width);
        String[] means = {a, b, c, d};
        for (int quarter = 0; quarter < 4; quarter++) {
            assertNear(mean(shown, quarter % 2, quarter / 2), Integer.parseInt(means[quarter], 16));
        }
    }

    private static int mean(RgbPicture picture, int across, int down) {
        long[] sums = new long[3];
        int width = picture.width() / 2;
        int height = picture.height() / 2;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int rgb = picture.argb()[(down * height + y) * picture.width() + across * width + x];
                for (int i = 0; i < 3; i++) {
                    sums[i] += rgb >> (16 - 8 * i) & 0xFF;
                }
            }
        }
        long count = (long) width * height;
        return (int) (sums[0] / count << 16 | sums[1] / count << 8 | sums[2] / count);
    }

    @Test
    void aPictureThatClaimsToBeHugeReachesNoDecoder() throws IOException {
        PhotoReader never = new PhotoReader(falseDecoder("touch " + folder.resolve("called"), Duration.ofSeconds(5)));
        PhotoReader.Reading reading = read(never, claiming(60_000), MediaType.HEIC);
        assertThat(reading.sizes()).isEmpty();
        assertThat(reading.notes()).singleElement().asString().contains("60,000 × 60,000");
        assertThat(folder.resolve("called")).doesNotExist();
    }

    /** The heading says 120 × 100, the grid itself 60000 × 60000. */
    @Test
    void aGridThatIsLargerThanItsHeadingEndsInASentence() throws IOException {
        needsADecoder();
        byte[] grid = Corners.fixture("grid.heic");
        int at = indexOf(grid, new byte[] {0, 0, 1, 1, 0, 120, 0, 100});
        ByteBuffer.wrap(grid).putShort(at + 4, (short) 60_000).putShort(at + 6, (short) 60_000);
        PhotoReader.Reading reading = read(new PhotoReader(), grid, MediaType.HEIC);
        assertThat(reading.sizes()).isEmpty();
        assertThat(reading.notes()).singleElement().asString().contains("kept as it is");
        assertNoFolderIsLeft();
    }

    @Test
    void brokenOffAndGarbledFilesEndInASentence() throws IOException {
        needsADecoder();
        byte[] whole = Corners.fixture("grid.heic");
        Random random = new Random(14);
        int failed = 0;
        for (int round = 0; round < 4; round++) {
            byte[] damaged = round == 0 ? Arrays.copyOf(whole, whole.length - 60) : whole.clone();
            for (int i = 0; round > 0 && i < 60; i++) {
                damaged[damaged.length - 1 - random.nextInt(160)] = (byte) random.nextInt();
            }
            PhotoReader.Reading reading = read(new PhotoReader(), damaged, MediaType.HEIC);
            assertThat(reading.notes()).isNotEmpty();
            failed += reading.sizes().isEmpty() ? 1 : 0;
        }
        assertThat(failed).isPositive();
        byte[] garbage = new byte[2000];
        random.nextBytes(garbage);
        System.arraycopy(whole, 0, garbage, 0, 24);
        assertThat(read(new PhotoReader(), garbage, MediaType.HEIC).notes())
                .singleElement()
                .asString()
                .contains("could not be decoded");
        assertNoFolderIsLeft();
    }

    @ParameterizedTest
    @CsvSource({
        "sleep 30, took longer than",
        "'sleep 30 & wait', took longer than",
        "'head -c 3000000 /dev/zero > picture.png; sleep 30', wrote more than 1",
        "'yes', wrote more than 1",
        "'echo no such codec; exit 3', It wrote: no such codec",
        "'true', ended with an error",
        "'echo no picture > \"$2\"', No decoder"
    })
    void aDecoderIsHeldWithinItsBounds(String script, String sentence) throws IOException {
        // Long enough for a busy machine where the clock is not what ends it.
        Duration time = sentence.startsWith("took") ? Duration.ofMillis(400) : Duration.ofSeconds(10);
        PhotoReader reader = new PhotoReader(falseDecoder(script, time));
        long begun = System.nanoTime();
        PhotoReader.Reading reading = read(reader, Corners.fixture("corners.heic"), MediaType.HEIC);
        assertThat(Duration.ofNanos(System.nanoTime() - begun)).isLessThan(Duration.ofSeconds(15));
        assertThat(reading.sizes()).isEmpty();
        assertThat(reading.width()).isEqualTo(128);
        assertThat(reading.notes()).singleElement().asString().contains(sentence);
        assertNoFolderIsLeft();
    }

    private InstalledDecoders falseDecoder(String script, Duration time) throws IOException {
        assumeTrue(
                Files.isExecutable(Path.of("/bin/sh"))
                        && Files.getFileStore(folder).supportsFileAttributeView("posix"),
                "the false decoder is a shell script, and this system has no /bin/sh");
        Path programs = Files.createDirectories(folder.resolve("programs"));
        String states = "#!/bin/sh\n[ \"$1\" = --version ] && { echo 1.2; exit; }\n";
        Path program = Files.writeString(programs.resolve("heif-dec"), states + script + "\n");
        Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwx------"));
        return new InstalledDecoders(List.of(programs), new DecoderBounds(time, 1 << 20, 1L << 30));
    }

    private static void needsADecoder() {
        assumeTrue(
                InstalledDecoders.here().find().isPresent(), "no decoder of HEIC pictures (libheif) on this computer");
    }

    private PhotoReader.Reading read(PhotoReader reader, byte[] bytes, MediaType type) throws IOException {
        assertThat(MediaType.of(bytes)).contains(type);
        Path file = Files.write(folder.resolve("photo"), bytes);
        PhotoReader.Reading reading = reader.read(file, type, PhotoFactsReader.read(file), 2048);
        assertThat(file).hasBinaryContent(bytes);
        return reading;
    }

    /** The fixture with another size in the property of the whole picture. */
    private static byte[] claiming(int side) {
        byte[] grid = read("grid.heic");
        int at = indexOf(grid, new byte[] {0, 0, 0, 120, 0, 0, 0, 100});
        ByteBuffer.wrap(grid).putInt(at, side).putInt(at + 4, side);
        return grid;
    }

    private static byte[] read(String fixture) {
        try {
            return Corners.fixture(fixture);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static int indexOf(byte[] bytes, byte[] part) {
        String all = new String(bytes, StandardCharsets.ISO_8859_1);
        int at = all.indexOf(new String(part, StandardCharsets.ISO_8859_1));
        assertThat(at).isPositive();
        return at;
    }

    private static void assertNoFolderIsLeft() throws IOException {
        try (var files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            assertThat(files.filter(file -> file.getFileName()
                            .toString()
                            .startsWith("tenterbook-decoder-"
                                    + ProcessHandle.current().pid() + "-")))
                    .isEmpty();
        }
    }

    private static int at(PhotoReader.Reading reading, double across, double down) {
        RgbPicture picture = reading.sizes().get(0);
        int x = (int) (across * picture.width());
        int y = (int) (down * picture.height());
        return picture.argb()[y * picture.width() + x];
    }

    private static void assertNear(int found, int expected) {
        assertThat(Ciede2000.difference(
                        Srgb.ofRgb(found).lab(), Srgb.ofRgb(expected).lab()))
                .as("%06x against %06x", found & 0xffffff, expected)
                .isLessThanOrEqualTo(3);
    }
}
