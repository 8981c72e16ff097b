package tenterbook.documents.layout;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Iterator;
import java.util.Map;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import tenterbook.documents.PhotoSource;
import tenterbook.imaging.PreviewSize;
import tenterbook.measure.Digest;

/** Photographs reduced to what a printer resolves at the size they are printed. */
final class PrintImages {
    /** Common practice for photographs on an office printer. */
    static final double DPI = 200;

    private static final float QUALITY = 0.88f;

    private final PhotoSource source;
    private final Map<String, Optional<Shot>> made = new HashMap<>();

    /** A photograph at the size it is drawn, in millimetres. */
    static final class Shot {
        private final Digest digest;
        private final byte[] file;
        private final int pixels;
        private final double width;
        private final double height;
        private byte[] jpeg;

        private Shot(Digest digest, byte[] file, int pixels, double width, double height) {
            this.digest = digest;
            this.file = file;
            this.pixels = pixels;
            this.width = width;
            this.height = height;
        }

        double width() {
            return width;
        }

        double height() {
            return height;
        }

        /** Of about {@link #DPI}; fewer where the original has no more. Made when first asked for, and once. */
        byte[] jpeg() {
            try {
                if (jpeg == null) {
                    BufferedImage picture = ImageIO.read(new ByteArrayInputStream(file));
                    jpeg = pixels >= picture.getWidth() ? file : encoded(smaller(picture, pixels));
                }
                return jpeg;
            } catch (IOException e) {
                throw unread(digest, e);
            }
        }
    }

    PrintImages(PhotoSource source) {
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
            return extent(file.get()).map(picture -> {
                double scale = Math.min(width / picture.getWidth(), height / picture.getHeight());
                double w = picture.getWidth() * scale;
                int pixels = (int) Math.round(w / 25.4 * DPI);
                return new Shot(digest, file.get(), pixels, w, picture.getHeight() * scale);
            });
        } catch (IOException e) {
            throw unread(digest, e);
        }
    }

    private static UncheckedIOException unread(Digest digest, IOException e) {
        return new UncheckedIOException(
                "The photograph %s could not be read for the document: %s".formatted(digest.hex(), e.getMessage()), e);
    }

    /** From the picture's head alone; empty where it is of no kind that can be read. */
    private static Optional<Dimension> extent(byte[] file) throws IOException {
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(file))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return Optional.empty();
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, true);
                return Optional.of(new Dimension(reader.getWidth(0), reader.getHeight(0)));
            } finally {
                reader.dispose();
            }
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
