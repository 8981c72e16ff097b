package tenterbook.imaging.pixels;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.ajalt.colormath.model.RGB;
import com.github.ajalt.colormath.model.RGBColorSpaces;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Srgb;
import tenterbook.imaging.Corners;
import tenterbook.imaging.ExifBytes;
import tenterbook.imaging.ProfileBytes;
import tenterbook.imaging.decoder.DecoderBounds;
import tenterbook.imaging.decoder.InstalledDecoders;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoFactsReader;
import tenterbook.imaging.file.TruncationCheck;

class PhotoReaderTest {
    @TempDir
    Path folder;

    /** Where the stored upper corners belong, read off the table of tag 274 in JEITA CP-3451 (row 0 and column 0). */
    @ParameterizedTest
    @CsvSource({"1,UL,UR", "2,UR,UL", "3,LR,LL", "4,LL,LR", "5,UL,LL", "6,UR,LR", "7,LR,UR", "8,LL,UL"})
    void everyOrientationStandsUpright(int orientation, String upperLeftGoes, String upperRightGoes)
            throws IOException {
        byte[] jpeg = new ExifBytes().orientation(orientation).in(Corners.jpeg(64, 32));
        PhotoReader.Reading reading = read(jpeg, MediaType.JPEG, 2048);

        RgbPicture picture = reading.sizes().get(0);
        assertThat(picture.width()).isEqualTo(orientation < 5 ? 64 : 32).isEqualTo(reading.width());
        assertThat(picture.height()).isEqualTo(orientation < 5 ? 32 : 64).isEqualTo(reading.height());
        assertNear(corner(picture, upperLeftGoes), Corners.UPPER_LEFT, 3);
        assertNear(corner(picture, upperRightGoes), Corners.UPPER_RIGHT, 3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"corners-lossless.webp", "corners-lossy.webp"})
    void webpIsRead(String name) throws IOException {
        PhotoReader.Reading reading = read(Corners.fixture(name), MediaType.WEBP, 2048);
        assertCorners(reading.sizes().get(0), name.contains("lossless") ? 0.01 : 4);
        assertThat(reading.notes()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"png, 1, PNG", "png, 2, PNG", "png, 13, PNG", "tiff, 1, TIFF", "tiff, 6, TIFF"})
    void losslessFormatsAreReadExactly(String format, int imageType, MediaType type) throws IOException {
        byte[] bytes = Corners.encoded(Corners.image(40, 20, imageType), format);
        RgbPicture picture = read(bytes, type, 2048).sizes().get(0);
        if (imageType == BufferedImage.TYPE_BYTE_INDEXED) {
            assertCorners(picture, 12);
        } else {
            assertCorners(picture, 0.01);
        }
    }

    @Test
    void greyStaysAsGreyAsItWas() throws IOException {
        BufferedImage grey = new BufferedImage(8, 8, BufferedImage.TYPE_BYTE_GRAY);
        BufferedImage deep = new BufferedImage(8, 8, BufferedImage.TYPE_USHORT_GRAY);
        for (int i = 0; i < 64; i++) {
            grey.getRaster().setSample(i % 8, i / 8, 0, 119);
            deep.getRaster().setSample(i % 8, i / 8, 0, 119 << 8 | 119);
        }
        for (BufferedImage image : new BufferedImage[] {grey, deep}) {
            RgbPicture picture = read(Corners.encoded(image, "png"), MediaType.PNG, 2048)
                    .sizes()
                    .get(0);
            assertThat(picture.argb()[0]).isEqualTo(0xff777777);
        }
        RgbPicture jpeg = read(Corners.encoded(grey, "jpeg"), MediaType.JPEG, 2048)
                .sizes()
                .get(0);
        assertNear(jpeg.argb()[0], 0x777777, 1);
    }

    /** Expected values: colormath 3.6.1, an independent library, from its own Adobe RGB to sRGB. */
    @ParameterizedTest
    @ValueSource(ints = {0xa08060, 0x809a70, 0x5060a0, 0x777777})
    void anEmbeddedProfileIsAppliedInEveryFormat(int stored) throws IOException {
        BufferedImage flat = new BufferedImage(32, 32, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 1024; i++) {
            flat.setRGB(i % 32, i / 32, stored);
        }
        RGB expected = new RGB(
                        (stored >> 16 & 255) / 255f,
                        (stored >> 8 & 255) / 255f,
                        (stored & 255) / 255f,
                        1,
                        RGBColorSpaces.INSTANCE.getAdobeRGB())
                .toSRGB();
        int rgb = expected.getRedInt() << 16 | expected.getGreenInt() << 8 | expected.getBlueInt();

        byte[] jpeg = ExifBytes.withProfile(Corners.jpeg(flat), ProfileBytes.likeAdobeRgb());
        byte[] png = withChunk(Corners.encoded(flat, "png"), "iCCP", packed(ProfileBytes.likeAdobeRgb()));
        PhotoReader.Reading fromJpeg = read(jpeg, MediaType.JPEG, 2048);
        PhotoReader.Reading fromPng = read(png, MediaType.PNG, 2048);
        assertNear(fromJpeg.sizes().get(0).argb()[0], rgb, 1.5);
        assertNear(fromPng.sizes().get(0).argb()[0], rgb, 1);
        assertThat(fromJpeg.notes()).isEmpty();
        assertThat(fromPng.notes()).isEmpty();
    }

    @Test
    void aBrokenProfileIsNotedAndThePictureKept() throws IOException {
        byte[] garbled = ProfileBytes.likeAdobeRgb();
        java.util.Arrays.fill(garbled, 100, garbled.length, (byte) 0x5a);
        byte[] jpeg = ExifBytes.withProfile(Corners.jpeg(64, 32), garbled);
        byte[] png = withChunk(
                Corners.encoded(Corners.image(64, 32, BufferedImage.TYPE_INT_RGB), "png"), "iCCP", packed(garbled));

        PhotoReader.Reading fromJpeg = read(jpeg, MediaType.JPEG, 2048);
        assertCorners(fromJpeg.sizes().get(0), 3);
        assertThat(fromJpeg.notes()).isNotEmpty();
        PhotoReader.Reading fromPng = read(png, MediaType.PNG, 2048);
        assertCorners(fromPng.sizes().get(0), 0.01);
        assertThat(fromPng.notes()).anyMatch(note -> note.contains("profile is broken"));
    }

    @Test
    void aPictureThatClaimsToBeHugeIsNotDecoded() throws IOException {
        byte[] png = Corners.encoded(Corners.image(4, 4, BufferedImage.TYPE_INT_RGB), "png");
        ByteBuffer heading = ByteBuffer.wrap(png);
        heading.putInt(16, 60_000).putInt(20, 60_000);
        CRC32 crc = new CRC32();
        crc.update(png, 12, 17);
        heading.putInt(29, (int) crc.getValue());

        PhotoReader.Reading reading = read(png, MediaType.PNG, 2048);
        assertThat(reading.sizes()).isEmpty();
        assertThat(reading.width()).isEqualTo(60_000);
        assertThat(reading.notes())
                .singleElement()
                .asString()
                .contains("60,000 × 60,000")
                .contains("exhaust memory");
    }

    @ParameterizedTest
    @CsvSource({"corners.heic, HEIC", "corners.avif, AVIF"})
    void whatCannotBeShownIsMeasuredAllTheSame(String name, MediaType type) throws IOException {
        Path file = Files.write(folder.resolve("photo"), Corners.fixture(name));
        PhotoReader without = new PhotoReader(new InstalledDecoders(List.of(), DecoderBounds.USUAL));
        PhotoReader.Reading reading = without.read(file, type, PhotoFactsReader.read(file), 2048);
        assertThat(reading.sizes()).isEmpty();
        assertThat(reading.notes())
                .singleElement()
                .asString()
                .contains("add a JPEG copy")
                .contains("libheif");
        assertThat(reading.width()).isEqualTo(128);
        assertThat(reading.height()).isEqualTo(64);
    }

    /** Each kind of damage kept Java's reader from the pixels when it read the metadata too (tried with Java 17). */
    @ParameterizedTest
    @ValueSource(strings = {"zTXt", "tIME", "gAMA", "cHRM", "pHYs", "sBIT"})
    void badMetadataDoNotKeepAPngFromBeingShown(String kind) throws IOException {
        for (int imageType : new int[] {BufferedImage.TYPE_INT_RGB, BufferedImage.TYPE_BYTE_INDEXED}) {
            byte[] png = withChunk(Corners.encoded(Corners.image(64, 32, imageType), "png"), kind, new byte[] {1});
            assertCorners(
                    read(png, MediaType.PNG, 2048).sizes().get(0), imageType == BufferedImage.TYPE_INT_RGB ? 0.01 : 12);
        }
    }

    /** Its profile still counts: the parts of a file fail one by one. */
    @Test
    void aProfileBesideBadMetadataIsApplied() throws IOException {
        byte[] plain = Corners.encoded(Corners.image(64, 32, BufferedImage.TYPE_INT_RGB), "png");
        byte[] whole = withChunk(plain, "iCCP", packed(ProfileBytes.likeAdobeRgb()));
        byte[] damaged = withChunk(whole, "tIME", new byte[] {1});
        RgbPicture expected = read(whole, MediaType.PNG, 2048).sizes().get(0);
        assertThat(read(damaged, MediaType.PNG, 2048).sizes().get(0).argb()).isEqualTo(expected.argb());
        assertThat(expected.argb()[0]).isNotEqualTo(0xff000000 | Corners.UPPER_LEFT);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void bigTiffIsReadAndABrokenOffOneIsNot(boolean little) throws IOException {
        byte[] tiff = bigTiff(little ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN, 0xc83232);
        PhotoReader.Reading reading = read(tiff, MediaType.TIFF, 2048);
        assertThat(reading.sizes().get(0).argb()).hasSize(256).containsOnly(0xffc83232);
        Path file = folder.resolve("photo");
        assertThat(TruncationCheck.fault(file, MediaType.TIFF)).isEmpty();
        Files.write(file, Arrays.copyOf(tiff, tiff.length - 1));
        assertThat(TruncationCheck.fault(file, MediaType.TIFF)).isPresent();
    }

    /** 16 by 16 pixels of one colour in one strip: as TIFF 6.0, with version 43 and offsets and counts of 8 bytes. */
    private static byte[] bigTiff(ByteOrder order, int rgb) {
        long[][] entries = {
            {256, 3, 1, 16},
            {257, 3, 1, 16},
            {258, 3, 3, 0},
            {259, 3, 1, 1},
            {262, 3, 1, 2},
            {273, 16, 1, 0},
            {277, 3, 1, 3},
            {278, 3, 1, 16},
            {279, 16, 1, 768}
        };
        int start = 16 + 8 + 20 * entries.length + 8;
        ByteBuffer out = ByteBuffer.allocate(start + 768).order(order);
        out.put((byte) (order == ByteOrder.LITTLE_ENDIAN ? 'I' : 'M')).put(out.get(0));
        out.putShort((short) 43)
                .putShort((short) 8)
                .putShort((short) 0)
                .putLong(16)
                .putLong(entries.length);
        for (long[] entry : entries) {
            out.putShort((short) entry[0]).putShort((short) entry[1]).putLong(entry[2]);
            int next = out.position() + 8;
            if (entry[0] == 258) {
                out.putShort((short) 8).putShort((short) 8).putShort((short) 8);
            } else if (entry[1] == 3) {
                out.putShort((short) entry[3]);
            } else {
                out.putLong(entry[0] == 273 ? start : entry[3]);
            }
            out.position(next);
        }
        out.position(start);
        for (int i = 0; i < 256; i++) {
            out.put((byte) (rgb >> 16)).put((byte) (rgb >> 8)).put((byte) rgb);
        }
        return out.array();
    }

    @Test
    void aDamagedMiddleLosesThePreviewAndNotThePhotograph() throws IOException {
        byte[] png = Corners.encoded(Corners.image(64, 64, BufferedImage.TYPE_INT_RGB), "png");
        java.util.Arrays.fill(png, 41, 60, (byte) 0);
        PhotoReader.Reading reading = read(png, MediaType.PNG, 2048);
        assertThat(reading.sizes()).isEmpty();
        assertThat(reading.notes()).singleElement().asString().contains("could not be decoded");
    }

    private PhotoReader.Reading read(byte[] bytes, MediaType type, int longEdge) throws IOException {
        assertThat(MediaType.of(bytes)).contains(type);
        Path file = Files.write(folder.resolve("photo"), bytes);
        return new PhotoReader().read(file, type, PhotoFactsReader.read(file), longEdge);
    }

    private static void assertCorners(RgbPicture picture, double tolerance) {
        assertNear(corner(picture, "UL"), Corners.UPPER_LEFT, tolerance);
        assertNear(corner(picture, "UR"), Corners.UPPER_RIGHT, tolerance);
        assertNear(corner(picture, "LL"), Corners.LOWER_LEFT, tolerance);
        assertNear(corner(picture, "LR"), Corners.LOWER_RIGHT, tolerance);
    }

    private static int corner(RgbPicture picture, String where) {
        int x = where.charAt(1) == 'L' ? 2 : picture.width() - 3;
        int y = where.charAt(0) == 'U' ? 2 : picture.height() - 3;
        return picture.argb()[y * picture.width() + x];
    }

    private static void assertNear(int found, int expected, double tolerance) {
        assertThat(Ciede2000.difference(
                        Srgb.ofRgb(found).lab(), Srgb.ofRgb(expected).lab()))
                .as("%06x against %06x", found & 0xffffff, expected)
                .isLessThanOrEqualTo(tolerance);
    }

    private static byte[] packed(byte[] profile) {
        Deflater deflater = new Deflater();
        deflater.setInput(profile);
        deflater.finish();
        byte[] buffer = new byte[4096];
        int length = deflater.deflate(buffer);
        deflater.end();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("test\0\0".getBytes(StandardCharsets.US_ASCII));
        out.write(buffer, 0, length);
        return out.toByteArray();
    }

    /** A PNG with one more chunk directly after its heading. */
    private static byte[] withChunk(byte[] png, String kind, byte[] data) {
        ByteBuffer chunk = ByteBuffer.allocate(12 + data.length);
        chunk.putInt(data.length).put(kind.getBytes(StandardCharsets.US_ASCII)).put(data);
        CRC32 crc = new CRC32();
        crc.update(chunk.array(), 4, 4 + data.length);
        chunk.putInt((int) crc.getValue());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(png, 0, 33);
        out.writeBytes(chunk.array());
        out.write(png, 33, png.length - 33);
        return out.toByteArray();
    }
}
