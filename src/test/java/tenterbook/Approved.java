package tenterbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * Pictures and words as they were looked at and found good, in {@code src/test/resources}. Words are compared exactly, pictures tile by
 * tile, so that one changed word is noticed. After a wanted change run the test with {@code -Dapproved.write=true}, look at what
 * changed, and keep it.
 */
public final class Approved {
    private static final Path RESOURCES = Path.of("src/test/resources");

    /** Side of a tile in pixels: about a word of small type. */
    private static final int TILE = 24;

    /** Share of a tile's pixels that may differ: edges of type may be drawn otherwise elsewhere. */
    private static final double MOST = 0.08;

    private Approved() {}

    /** @param name as in {@code labels/hang-tag.txt} */
    public static void words(String name, List<String> found) throws IOException {
        Path file = RESOURCES.resolve(name);
        String text = String.join("\n", found) + "\n";
        if (Boolean.getBoolean("approved.write")) {
            Files.writeString(file, text);
        }
        assertThat(text).as(name).isEqualTo(Files.readString(file));
    }

    /** @param name as in {@code labels/hang-tag.png} */
    public static void picture(String name, byte[] png) throws IOException {
        Path file = RESOURCES.resolve(name);
        if (Boolean.getBoolean("approved.write")
                && (!Files.exists(file) || worstTile(read(Files.readAllBytes(file)), read(png)) > MOST)) {
            Files.write(file, png);
        }
        BufferedImage golden = read(Files.readAllBytes(file));
        BufferedImage found = read(png);
        assertThat(List.of(found.getWidth(), found.getHeight()))
                .as(name)
                .isEqualTo(List.of(golden.getWidth(), golden.getHeight()));
        assertThat(worstTile(golden, found)).as("the worst tile of " + name).isLessThan(MOST);
    }

    public static BufferedImage read(byte[] png) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    /** The greatest share of unlike pixels in any tile; 1 for pictures of other sizes. */
    public static double worstTile(BufferedImage one, BufferedImage other) {
        if (one.getWidth() != other.getWidth() || one.getHeight() != other.getHeight()) {
            return 1;
        }
        double worst = 0;
        for (int top = 0; top < one.getHeight(); top += TILE) {
            for (int left = 0; left < one.getWidth(); left += TILE) {
                worst = Math.max(worst, unlike(one, other, left, top));
            }
        }
        return worst;
    }

    /** The share of a tile's pixels that differ by more than a quarter of the scale in green. */
    private static double unlike(BufferedImage one, BufferedImage other, int left, int top) {
        int unlike = 0;
        for (int y = top; y < Math.min(top + TILE, one.getHeight()); y++) {
            for (int x = left; x < Math.min(left + TILE, one.getWidth()); x++) {
                int difference = Math.abs((one.getRGB(x, y) >> 8 & 0xff) - (other.getRGB(x, y) >> 8 & 0xff));
                unlike += difference > 64 ? 1 : 0;
            }
        }
        return unlike / (double) (TILE * TILE);
    }
}
