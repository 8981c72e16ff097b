package tenterbook.imaging.pixels;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** JPEG files of our own making (ITU-T T.81, T.871): sRGB, without any metadata. */
public final class Jpeg {
    private Jpeg() {}

    public static byte[] encode(RgbPicture picture, float quality) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
        try (ImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(quality);
            writer.setOutput(out);
            writer.write(null, new IIOImage(onWhite(picture), null, null), param);
        } catch (IOException e) {
            throw new UncheckedIOException("A preview could not be encoded in memory", e);
        } finally {
            writer.dispose();
        }
        return withoutMetadata(bytes.toByteArray());
    }

    /** See-through pixels lie on white. */
    private static BufferedImage onWhite(RgbPicture picture) {
        WritableRaster raster = Raster.createWritableRaster(RgbBytes.model(picture.width(), picture.height()), null);
        byte[] rgb = ((DataBufferByte) raster.getDataBuffer()).getData();
        int at = 0;
        for (int pixel : picture.argb()) {
            int alpha = pixel >>> 24;
            for (int shift = 16; shift >= 0; shift -= 8) {
                int level = pixel >> shift & 0xff;
                rgb[at++] = (byte) (alpha == 255 ? level : (level * alpha + 255 * (255 - alpha) + 127) / 255);
            }
        }
        return RgbBytes.image(raster);
    }

    /**
     * Copies a JPEG file without its APP1 to APP13, APP15 and comment segments: Exif, XMP, IPTC, profiles, maker's notes.
     * APP0 (JFIF) and APP14 (how colours are coded) are needed to show it.
     *
     * @throws IllegalStateException if the segments cannot be followed
     */
    public static byte[] withoutMetadata(byte[] jpeg) {
        int scanAt = -1;
        for (int at = 2; scanAt < 0 && at + 4 <= jpeg.length && jpeg[at] == (byte) 0xff; at += length(jpeg, at)) {
            scanAt = (jpeg[at + 1] & 0xff) == 0xda ? at : -1;
        }
        if (scanAt < 0) {
            throw new IllegalStateException("A JPEG file of " + jpeg.length + " bytes is garbled before its picture");
        }
        byte[] copy = jpeg.clone();
        return Arrays.copyOfRange(copy, dropMetadata(copy, scanAt), copy.length);
    }

    /**
     * Moves those segments that are kept up to the first scan, in the same array.
     *
     * @param scanAt where the first scan's marker stands; the segments before it follow each other without a gap
     * @return where the file without metadata begins; what stands before that is no longer of use
     */
    static int dropMetadata(byte[] jpeg, int scanAt) {
        ByteArrayOutputStream kept = new ByteArrayOutputStream();
        kept.write(jpeg, 0, 2);
        for (int at = 2; at < scanAt; at += length(jpeg, at)) {
            int kind = jpeg[at + 1] & 0xff;
            boolean metadata = kind >= 0xe1 && kind <= 0xef && kind != 0xee || kind == 0xfe;
            if (!metadata) {
                kept.write(jpeg, at, length(jpeg, at));
            }
        }
        System.arraycopy(kept.toByteArray(), 0, jpeg, scanAt - kept.size(), kept.size());
        return scanAt - kept.size();
    }

    private static int length(byte[] jpeg, int segmentAt) {
        return 2 + ((jpeg[segmentAt + 2] & 0xff) << 8 | jpeg[segmentAt + 3] & 0xff);
    }
}
