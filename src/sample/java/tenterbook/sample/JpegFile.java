package tenterbook.sample;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Writes an upright picture as a telephone stores it: turned, compressed, with Exif and at will an ICC profile. */
final class JpegFile {
    private static final float[] QUALITIES = {0.84f, 0.76f, 0.68f, 0.56f};
    private static final float FINEST = 0.9f;
    private static final int LARGEST = 275_000;

    private JpegFile() {}

    /** The pixels as stored, so that a viewer obeying the orientation shows the picture upright. */
    static BufferedImage stored(BufferedImage upright, int orientation) {
        int w = upright.getWidth();
        int h = upright.getHeight();
        boolean swap = orientation == 6 || orientation == 8;
        BufferedImage out = new BufferedImage(swap ? h : w, swap ? w : h, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < out.getHeight(); y++) {
            for (int x = 0; x < out.getWidth(); x++) {
                out.setRGB(
                        x,
                        y,
                        switch (orientation) {
                            case 3 -> upright.getRGB(w - 1 - x, h - 1 - y);
                            case 6 -> upright.getRGB(w - 1 - y, x);
                            case 8 -> upright.getRGB(y, h - 1 - x);
                            default -> upright.getRGB(x, y);
                        });
            }
        }
        return out;
    }

    /** A whole JPEG file, at the best of a few qualities that keeps it near a quarter of a megabyte. */
    static byte[] bytes(BufferedImage upright, ExifSegment.Shot shot, boolean withProfile) throws IOException {
        BufferedImage image = stored(upright, shot.orientation());
        byte[] plain = small(image);
        ByteArrayOutputStream out = new ByteArrayOutputStream(plain.length + 8000);
        out.write(0xFF);
        out.write(0xD8);
        segment(out, 0xE1, ExifSegment.of(shot));
        if (withProfile) {
            ByteArrayOutputStream icc = new ByteArrayOutputStream();
            icc.writeBytes("ICC_PROFILE\0\1\1".getBytes(StandardCharsets.US_ASCII));
            icc.writeBytes(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
            segment(out, 0xE2, icc.toByteArray());
        }
        int from = 2;
        if ((plain[2] & 0xff) == 0xFF && (plain[3] & 0xff) == 0xE0) {
            // Exif must stand first (DC-008, 4.7.1), and says all that the JFIF segment would.
            from = 4 + ((plain[4] & 0xff) << 8 | plain[5] & 0xff);
        }
        out.write(plain, from, plain.length - from);
        return out.toByteArray();
    }

    /** Begins in the middle, since most pictures end there, and goes finer only where there is ample room. */
    private static byte[] small(BufferedImage image) throws IOException {
        byte[] plain = new byte[0];
        for (float quality : QUALITIES) {
            plain = compressed(image, quality);
            if (plain.length <= LARGEST) {
                break;
            }
        }
        return plain.length < LARGEST * 0.66 ? compressed(image, FINEST) : plain;
    }

    private static void segment(ByteArrayOutputStream out, int marker, byte[] payload) {
        int length = payload.length + 2;
        if (length > 0xFFFF) {
            throw new IllegalArgumentException("A JPEG segment holds at most 65,533 bytes; found: " + payload.length);
        }
        out.write(0xFF);
        out.write(marker);
        out.write(length >> 8);
        out.write(length & 0xff);
        out.writeBytes(payload);
    }

    private static byte[] compressed(BufferedImage image, float quality) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(quality);
            writer.setOutput(stream);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }
}
