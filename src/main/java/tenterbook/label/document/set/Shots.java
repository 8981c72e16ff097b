package tenterbook.label.document.set;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import tenterbook.label.document.Photographs;
import tenterbook.measure.Digest;
import tenterbook.photo.PreviewSize;

/** Photographs reduced to what a printer resolves at the size they are printed. */
final class Shots {
    /** Common practice for photographs on an office printer. */
    static final double DPI = 200;

    private static final float QUALITY = 0.88f;

    private final Photographs source;
    private final Map<String, Optional<Shot>> made = new HashMap<>();

    /**
     * A photograph at the size it is drawn, in millimetres.
     *
     * @param jpeg of about {@link #DPI}; fewer where the original has no more
     */
    record Shot(byte[] jpeg, double width, double height) {}

    Shots(Photographs source) {
        this.source = source;
    }

    /** As large as the box allows, with its own proportions; empty where it cannot be shown. */
    Optional<Shot> in(Digest digest, double width, double height) {
        return made.computeIfAbsent(digest.hex() + " " + width + " " + height, key -> reduced(digest, width, height));
    }

    private Optional<Shot> reduced(Digest digest, double width, double height) {
        try {
            double dots = Math.max(width, height) / 25.4 * DPI;
            PreviewSize size = dots <= PreviewSize.SMALL.longEdge()
                    ? PreviewSize.SMALL
                    : dots <= PreviewSize.MEDIUM.longEdge() ? PreviewSize.MEDIUM : PreviewSize.LARGE;
            Optional<byte[]> file = source.jpeg(digest, size);
            if (file.isEmpty()) {
                return Optional.empty();
            }
            BufferedImage picture = ImageIO.read(new ByteArrayInputStream(file.get()));
            if (picture == null) {
                return Optional.empty();
            }
            double scale = Math.min(width / picture.getWidth(), height / picture.getHeight());
            double w = picture.getWidth() * scale;
            double h = picture.getHeight() * scale;
            int pixels = (int) Math.round(w / 25.4 * DPI);
            byte[] jpeg = pixels >= picture.getWidth() ? file.get() : encoded(smaller(picture, pixels));
            return Optional.of(new Shot(jpeg, w, h));
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "The photograph %s could not be read for the document: %s".formatted(digest.hex(), e.getMessage()),
                    e);
        }
    }

    /** Halved until near, so that no pixel is passed over. */
    private static BufferedImage smaller(BufferedImage picture, int width) {
        BufferedImage now = picture;
        while (now.getWidth() > width) {
            int to = Math.max(width, now.getWidth() / 2);
            int high = Math.max(1, (int) Math.round(picture.getHeight() * (double) to / picture.getWidth()));
            BufferedImage next = new BufferedImage(to, high, BufferedImage.TYPE_INT_RGB);
            Graphics2D graphics = next.createGraphics();
            graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            graphics.drawImage(now, 0, 0, to, high, null);
            graphics.dispose();
            now = next;
        }
        return now;
    }

    private static byte[] encoded(BufferedImage picture) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (var out = ImageIO.createImageOutputStream(bytes)) {
            writer.setOutput(out);
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionQuality(QUALITY);
            writer.write(null, new IIOImage(picture, null, null), how);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
