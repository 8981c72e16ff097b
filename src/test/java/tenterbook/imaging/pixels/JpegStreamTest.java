package tenterbook.imaging.pixels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.github.ajalt.colormath.model.RGB;
import com.github.ajalt.colormath.model.RGBColorSpaces;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.colour.space.SrgbCurve;
import tenterbook.imaging.Corners;
import tenterbook.imaging.ExifBytes;
import tenterbook.imaging.ProfileBytes;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoFactsReader;

class JpegStreamTest {
    @TempDir
    Path folder;

    /** The expected picture is worked out in doubles from the whole decoded one, area by area, in linear light. */
    @ParameterizedTest
    @CsvSource({"700, 431, 320", "431, 700, 320", "641, 3, 320", "1000, 1000, 333", "321, 320, 320", "640, 480, 320"})
    void everyPixelIsTheMeanLightOfItsArea(int width, int height, int longEdge) throws IOException {
        byte[] jpeg = Corners.jpeg(noise(width, height));
        RgbPicture picture = read(jpeg, longEdge).orElseThrow().picture();
        BufferedImage whole = ImageIO.read(new ByteArrayInputStream(jpeg));
        Random random = new Random(3);
        for (int i = 0; i < 400; i++) {
            int x = i == 0 ? picture.width() - 1 : random.nextInt(picture.width());
            int y = i == 0 ? picture.height() - 1 : random.nextInt(picture.height());
            for (int shift = 0; shift <= 16; shift += 8) {
                assertThat(picture.argb()[y * picture.width() + x] >> shift & 0xff)
                        .as("pixel %d, %d", x, y)
                        .isCloseTo(mean(whole, picture, x, y, shift), within(1));
            }
        }
    }

    private static int mean(BufferedImage whole, RgbPicture picture, int x, int y, int shift) {
        double wide = (double) whole.getWidth() / picture.width();
        double high = (double) whole.getHeight() / picture.height();
        double sum = 0;
        for (int v = (int) (y * high); v < Math.min(whole.getHeight(), (y + 1) * high); v++) {
            double down = Math.min(v + 1, (y + 1) * high) - Math.max(v, y * high);
            for (int u = (int) (x * wide); u < Math.min(whole.getWidth(), (x + 1) * wide); u++) {
                double across = Math.min(u + 1, (x + 1) * wide) - Math.max(u, x * wide);
                sum += down * across * SrgbCurve.linear(whole.getRGB(u, v) >> shift & 0xff);
            }
        }
        return SrgbCurve.encoded(sum / wide / high);
    }

    /**
     * Java does not promise that its decoder puts each row by itself and in order, nor that it holds no more than a row. Where a
     * later Java does otherwise, nothing is lost but speed and memory, for the picture is read the ordinary way; this test then
     * fails, and the streaming should be measured again or go.
     */
    @Test
    void javasDecoderHandsOverEachRowOnceAndInOrderAndHoldsNoPicture() throws IOException {
        byte[] jpeg = Corners.jpeg(3000, 2000);
        int[] rows = {0};
        DecoderRowSink sink = DecoderRowSink.of(3000, 2000, row -> rows[0]++);
        ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before;
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(jpeg))) {
            reader.setInput(in, true, true);
            ImageReadParam param = reader.getDefaultReadParam();
            param.setDestination(sink.image());
            before = threads.getCurrentThreadAllocatedBytes();
            reader.read(0, param);
        } finally {
            reader.dispose();
        }
        assertThat(threads.getCurrentThreadAllocatedBytes() - before)
                .as("bytes taken for a picture of 18,000,000")
                .isPositive()
                .isLessThan(3_000_000);
        assertThat(sink.complete()).isTrue();
        assertThat(rows[0]).isEqualTo(2000);
    }

    @Test
    void aJpegThatClaimsToBeHugeIsNotDecoded() throws IOException {
        byte[] jpeg = Corners.jpeg(noise(16, 16));
        int at = 2;
        while ((jpeg[at + 1] & 0xff) != 0xc0) {
            at += 2 + ((jpeg[at + 2] & 0xff) << 8 | jpeg[at + 3] & 0xff);
        }
        // 60,000 × 60,000, in the frame header (ITU-T T.81, B.2.2).
        jpeg[at + 5] = jpeg[at + 7] = (byte) 0xea;
        jpeg[at + 6] = jpeg[at + 8] = 0x60;
        assertThat(read(jpeg, 2048)).isEmpty();
        Path file = folder.resolve("a.jpg");
        PhotoReader.Reading reading = new PhotoReader().read(file, MediaType.JPEG, PhotoFactsReader.read(file), 2048);
        assertThat(reading.sizes()).isEmpty();
        assertThat(reading.notes()).singleElement().asString().contains("exhaust memory");
    }

    /** Java draws it once for each of its scans, so its rows do not come once and in order. */
    @Test
    void aProgressiveFileIsLeftToTheOther() throws IOException {
        byte[] progressive = progressive(noise(500, 400));
        assertThat(JpegHead.of(progressive).orElseThrow().width()).isEqualTo(500);
        assertThat(read(progressive, 320)).isEmpty();
    }

    /** Expected value: colormath 3.6.1, an independent library, from its own Adobe RGB to sRGB. */
    @Test
    void aProfileInTwoPartsIsAppliedToTheReducedPicture() throws IOException {
        BufferedImage flat = new BufferedImage(400, 400, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 160_000; i++) {
            flat.setRGB(i % 400, i / 400, 0x5060a0);
        }
        byte[] profile = ProfileBytes.likeAdobeRgb();
        byte[] jpeg = withPart(Corners.jpeg(flat), profile, 2, profile.length / 2, profile.length);
        jpeg = withPart(jpeg, profile, 1, 0, profile.length / 2);

        assertThat(read(jpeg, 320)).isPresent();
        Path file = folder.resolve("a.jpg");
        PhotoReader.Reading reduced = new PhotoReader().read(file, MediaType.JPEG, PhotoFactsReader.read(file), 320);
        RGB expected =
                new RGB(0x50 / 255f, 0x60 / 255f, 0xa0 / 255f, 1, RGBColorSpaces.INSTANCE.getAdobeRGB()).toSRGB();
        assertThat(reduced.sizes().get(0).argb()[0] >> 16 & 0xff).isCloseTo(expected.getRedInt(), within(2));
        assertThat(reduced.sizes().get(0).argb()[0] & 0xff).isCloseTo(expected.getBlueInt(), within(2));
        assertThat(reduced.notes()).isEmpty();
    }

    @Test
    void aMissingPartOfAProfileIsNoProfile() throws IOException {
        byte[] profile = ProfileBytes.likeAdobeRgb();
        byte[] jpeg = withPart(Corners.jpeg(noise(16, 16)), profile, 2, profile.length / 2, profile.length);
        assertThat(JpegHead.of(jpeg).orElseThrow().profile()).isNull();
    }

    @ParameterizedTest
    @ValueSource(ints = {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_INT_RGB})
    void whatIsNotForTheQuickWayIsLeftToTheOther(int type) throws IOException {
        // Grey has one band; a picture within the size asked for needs no reducing.
        int side = type == BufferedImage.TYPE_BYTE_GRAY ? 400 : 300;
        assertThat(read(Corners.encoded(Corners.image(side, side, type), "jpeg"), 320))
                .isEmpty();
    }

    @Test
    void aFileGarbledBeforeItsPictureIsLeftToTheOther() throws IOException {
        byte[] jpeg = Corners.jpeg(noise(400, 400));
        jpeg[20] = 0;
        assertThat(JpegHead.of(jpeg)).isEmpty();
        assertThat(read(jpeg, 320)).isEmpty();
    }

    private Optional<JpegStream.Reduced> read(byte[] jpeg, int longEdge) throws IOException {
        return JpegStream.read(Files.write(folder.resolve("a.jpg"), jpeg), longEdge, PhotoReader.MOST_PIXELS);
    }

    private static byte[] withPart(byte[] jpeg, byte[] profile, int number, int from, int to) {
        byte[] payload = new byte[14 + to - from];
        System.arraycopy("ICC_PROFILE\0".getBytes(java.nio.charset.StandardCharsets.US_ASCII), 0, payload, 0, 12);
        payload[12] = (byte) number;
        payload[13] = 2;
        System.arraycopy(Arrays.copyOfRange(profile, from, to), 0, payload, 14, to - from);
        return ExifBytes.withSegment(jpeg, 0xe2, payload);
    }

    private static BufferedImage noise(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(1);
        for (int i = 0; i < width * height; i++) {
            image.setRGB(i % width, i / width, random.nextInt(1 << 24));
        }
        return image;
    }

    private static byte[] progressive(BufferedImage image) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
