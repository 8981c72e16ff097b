package tenterbook.search.recognition;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import tenterbook.board.BoardId;
import tenterbook.colour.palette.Pixels;
import tenterbook.measure.Digest;
import tenterbook.piece.PieceNumber;
import tenterbook.recipe.BoardUse;
import tenterbook.sample.RecognitionScene;

/** Rendered photographs with what they truly show, kept in a folder so that they are drawn once. */
final class RenderedSet implements Indexed {
    private static final float QUALITY = 0.9f;

    private final Path folder;
    private final Preselection preselection = new Preselection();
    private final Map<Digest, PhotoFeatures> features = new HashMap<>();
    private final Map<Digest, List<Shown>> shown = new HashMap<>();

    RenderedSet(Path folder) {
        this.folder = folder;
    }

    static Digest digest(RecognitionScene scene) {
        return Digest.of(scene.file().getBytes(StandardCharsets.UTF_8));
    }

    static BoardUse board(RecognitionScene scene) {
        String[] parts = scene.board().split("-");
        return new BoardUse(new BoardId(parts[0]), parts.length > 1 ? parts[1] : "");
    }

    /** Takes photographs into what is compared. */
    RenderedSet with(Collection<RecognitionScene> scenes) throws IOException {
        for (RecognitionScene scene : scenes) {
            PhotoFeatures found = features(scene);
            Digest digest = digest(scene);
            features.put(digest, found);
            preselection.put(digest, Codes.kept(found));
            shown.put(digest, List.of(new Shown(new PieceNumber(scene.piece()), 1, List.of(board(scene)), () -> null)));
        }
        return this;
    }

    BufferedImage picture(RecognitionScene scene) throws IOException {
        Path file = folder.resolve(scene.file().replace(".jpg", "") + ".jpg");
        if (!Files.exists(file)) {
            Files.createDirectories(folder);
            Path part = folder.resolve("part");
            Files.write(part, jpeg(scene.take(), QUALITY));
            Files.move(part, file);
        }
        return ImageIO.read(file.toFile());
    }

    PhotoFeatures features(RecognitionScene scene) throws IOException {
        Path file = folder.resolve("features-" + FeatureFinder.VERSION).resolve(scene.file());
        if (Files.exists(file)) {
            return PhotoFeatures.of(Files.readAllBytes(file));
        }
        PhotoFeatures found = FeatureFinder.of(pixels(picture(scene)));
        Files.createDirectories(file.getParent());
        Files.write(file, found.bytes());
        return found;
    }

    static byte[] jpeg(BufferedImage image, float quality) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam how = writer.getDefaultWriteParam();
        how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        how.setCompressionQuality(quality);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (var to = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(to);
            writer.write(null, new IIOImage(plain(image, image.getWidth(), image.getHeight()), null, null), how);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }

    private static BufferedImage plain(BufferedImage image, int width, int height) {
        BufferedImage plain = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = plain.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g.drawImage(image, 0, 0, width, height, null);
        g.dispose();
        return plain;
    }

    static Pixels pixels(BufferedImage image) {
        int width = image.getWidth();
        int height = image.getHeight();
        return new Pixels(image.getRGB(0, 0, width, height, null, 0, width), width, height);
    }

    /** Left and right exchanged, and turned by the angle (degrees) before a grey ground. */
    static BufferedImage mirroredAndTurned(BufferedImage image, double degrees) {
        double cos = Math.abs(Math.cos(Math.toRadians(degrees)));
        double sin = Math.abs(Math.sin(Math.toRadians(degrees)));
        int width = (int) Math.round(image.getWidth() * cos + image.getHeight() * sin);
        int height = (int) Math.round(image.getWidth() * sin + image.getHeight() * cos);
        BufferedImage turned = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = turned.createGraphics();
        g.setColor(java.awt.Color.LIGHT_GRAY);
        g.fillRect(0, 0, width, height);
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g.translate(width / 2.0, height / 2.0);
        g.rotate(Math.toRadians(degrees));
        g.scale(-1, 1);
        g.drawImage(image, -image.getWidth() / 2, -image.getHeight() / 2, null);
        g.dispose();
        return turned;
    }

    /** A part of it, made poor: 60 per cent of the size, a warm cast, strong compression. */
    static BufferedImage degraded(BufferedImage image, int across, int down, int part) throws IOException {
        int width = image.getWidth() / across;
        int height = image.getHeight() / down;
        BufferedImage cut = image.getSubimage(part % across * width, part / across % down * height, width, height);
        BufferedImage small = plain(cut, width * 6 / 10, height * 6 / 10);
        for (int y = 0; y < small.getHeight(); y++) {
            for (int x = 0; x < small.getWidth(); x++) {
                int rgb = small.getRGB(x, y);
                int red = Math.min(255, (rgb >> 16 & 0xff) * 112 / 100);
                int blue = (rgb & 0xff) * 82 / 100;
                small.setRGB(x, y, red << 16 | rgb & 0xff00 | blue);
            }
        }
        return ImageIO.read(new ByteArrayInputStream(jpeg(small, 0.4f)));
    }

    /** All photographs of a board pair in any state. */
    List<Digest> ofPair(RecognitionScene scene) {
        List<Digest> found = new ArrayList<>();
        shown.forEach((photo, of) -> {
            if (of.get(0).boards().get(0).board().equals(board(scene).board())) {
                found.add(photo);
            }
        });
        return found;
    }

    List<Digest> ofPiece(RecognitionScene scene) {
        List<Digest> found = new ArrayList<>();
        shown.forEach((photo, of) -> {
            if (of.get(0).piece().value().equals(scene.piece())) {
                found.add(photo);
            }
        });
        return found;
    }

    @Override
    public Preselection preselection() {
        return preselection;
    }

    @Override
    public Map<Digest, PhotoFeatures> features(Collection<Digest> photos) {
        Map<Digest, PhotoFeatures> found = new HashMap<>(features);
        found.keySet().retainAll(photos);
        return found;
    }

    @Override
    public Map<Digest, List<Shown>> shown(Collection<Digest> photos) {
        Map<Digest, List<Shown>> found = new HashMap<>(shown);
        found.keySet().retainAll(photos);
        return found;
    }

    @Override
    public int waiting() {
        return 0;
    }
}
