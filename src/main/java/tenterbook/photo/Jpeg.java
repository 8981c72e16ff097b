package tenterbook.photo;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** JPEG files of our own making (ITU-T T.81, T.871): sRGB, without any metadata. */
final class Jpeg {
    private Jpeg() {}

    static byte[] encode(Picture picture, float quality) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
        try (ImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(quality);
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture.opaque(), null, null), param);
        } catch (IOException e) {
            throw new UncheckedIOException("A preview could not be encoded in memory", e);
        } finally {
            writer.dispose();
        }
        return withoutMetadata(bytes.toByteArray());
    }

    /**
     * Copies a JPEG file without its APP1 to APP13, APP15 and comment segments: Exif, XMP, IPTC, profiles, maker's notes.
     * APP0 (JFIF) and APP14 (how colours are coded) are needed to show it.
     *
     * @throws IllegalArgumentException if the segments cannot be followed
     */
    static byte[] withoutMetadata(byte[] jpeg) {
        ByteArrayOutputStream kept = new ByteArrayOutputStream(jpeg.length);
        kept.write(jpeg, 0, 2);
        ByteBuffer in = ByteBuffer.wrap(jpeg);
        int at = 2;
        while (at + 4 <= jpeg.length && jpeg[at] == (byte) 0xff) {
            int kind = jpeg[at + 1] & 0xff;
            if (kind == 0xda) {
                kept.write(jpeg, at, jpeg.length - at);
                return kept.toByteArray();
            }
            int length = 2 + (in.getShort(at + 2) & 0xffff);
            boolean metadata = kind >= 0xe1 && kind <= 0xef && kind != 0xee || kind == 0xfe;
            if (!metadata && at + length <= jpeg.length) {
                kept.write(jpeg, at, length);
            }
            at += length;
        }
        throw new IllegalArgumentException("A JPEG file of " + jpeg.length + " bytes is garbled at byte " + at);
    }
}
