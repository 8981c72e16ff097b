package tenterbook.bench;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * Photographs as large as a camera's: pictures of the sample archive scaled up, with threads and sensor grain laid over
 * them so that they are as hard to decode as real ones, at quality 0.9 and with an Exif orientation of each kind in turn.
 */
final class BenchPhotos {
    private static final int[][] SIZES = {{4000, 3000}, {4624, 3468}, {5184, 3888}, {5472, 3648}, {6000, 4000}};
    private static final int ENORMOUS_WIDTH = 16_384;
    private static final int ENORMOUS_HEIGHT = 12_288;
    private static final float QUALITY = 0.9f;
    private static final int GRAINS = 1 << 20;

    private BenchPhotos() {}

    /** Makes those that are missing; needs about 1 GB for the enormous one. */
    public static void main(String[] args) throws IOException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        int count = Integer.parseInt(args[1]);
        List<Path> motifs;
        try (Stream<Path> files = Files.walk(Path.of("sample-archive", "data", "photos"))) {
            motifs = files.filter(file -> file.toString().endsWith(".jpg"))
                    .sorted()
                    .toList();
        }
        if (motifs.isEmpty()) {
            throw new IOException("No pictures under sample-archive/data/photos; run this from the project's folder.");
        }
        for (int i = 0; i < count; i++) {
            int[] size = SIZES[i % SIZES.length];
            make(folder.resolve("p%03d.jpg".formatted(i)), motifs.get(i % motifs.size()), size[0], size[1], i);
        }
        if (args.length > 2) {
            make(Path.of(args[2]), motifs.get(0), ENORMOUS_WIDTH, ENORMOUS_HEIGHT, 5);
        }
    }

    static List<Path> in(Path folder, int count) {
        List<Path> photos = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            photos.add(folder.resolve("p%03d.jpg".formatted(i)));
        }
        return photos;
    }

    private static void make(Path file, Path motif, int width, int height, int number) throws IOException {
        if (Files.exists(file)) {
            return;
        }
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        graphics.drawImage(ImageIO.read(motif.toFile()), 0, 0, width, height, null);
        graphics.dispose();
        weave(((DataBufferByte) image.getRaster().getDataBuffer()).getData(), width, height, new Random(number));
        Path part = file.resolveSibling(file.getFileName() + ".part");
        Files.write(part, withOrientation(jpeg(image), 1 + number % 8));
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
        System.out.printf(
                Locale.ROOT, "made %s, %d × %d, %,d bytes%n", file.getFileName(), width, height, Files.size(file));
    }

    /** Threads eleven pixels apart, and grain of about six levels. */
    private static void weave(byte[] pixels, int width, int height, Random random) {
        byte[] grain = new byte[GRAINS];
        for (int i = 0; i < GRAINS; i++) {
            grain[i] = (byte) Math.round(random.nextGaussian() * 6);
        }
        int[] across = new int[width];
        for (int x = 0; x < width; x++) {
            across[x] = (int) Math.round(6 * Math.sin(x * 2 * Math.PI / 11.3));
        }
        for (int y = 0; y < height; y++) {
            int along = (int) Math.round(6 * Math.sin(y * 2 * Math.PI / 10.7));
            int speck = random.nextInt(GRAINS);
            for (int x = 0, at = 3 * y * width; x < width; x++, at += 3) {
                int thread = (x / 11 + y / 11) % 2 == 0 ? across[x] : along;
                for (int band = 0; band < 3; band++) {
                    int value = (pixels[at + band] & 0xff) + thread + grain[speck++ & GRAINS - 1];
                    pixels[at + band] = (byte) Math.max(0, Math.min(255, value));
                }
            }
        }
    }

    private static byte[] jpeg(BufferedImage image) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 24);
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(QUALITY);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    /** With an Exif segment (JEITA CP-3451) of three entries: maker, model, orientation. */
    private static byte[] withOrientation(byte[] jpeg, int orientation) throws IOException {
        byte[] maker = "Sarelho Optics\0\0".getBytes(StandardCharsets.US_ASCII);
        byte[] model = "SO-7 bench\0\0".getBytes(StandardCharsets.US_ASCII);
        int dataAt = 8 + 2 + 3 * 12 + 4;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(jpeg.length + 128);
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(jpeg, 0, 2);
        out.writeShort(0xffe1);
        out.writeShort(2 + 6 + dataAt + maker.length + model.length);
        out.writeBytes("Exif\0\0MM\0*");
        out.writeInt(8);
        out.writeShort(3);
        entry(out, 0x010f, 2, maker.length, dataAt);
        entry(out, 0x0110, 2, model.length, dataAt + maker.length);
        entry(out, 0x0112, 3, 1, orientation << 16);
        out.writeInt(0);
        out.write(maker);
        out.write(model);
        out.write(jpeg, 2, jpeg.length - 2);
        return bytes.toByteArray();
    }

    private static void entry(DataOutputStream out, int tag, int type, int count, int value) throws IOException {
        out.writeShort(tag);
        out.writeShort(type);
        out.writeInt(count);
        out.writeInt(value);
    }
}
