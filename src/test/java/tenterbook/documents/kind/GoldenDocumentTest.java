package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.layout.DocumentPaper;

/**
 * First pages of documents as they were looked at and found good. After a wanted change of design, run with {@code
 * -Ddocuments.golden=<folder>}, look at the new pictures, and keep them.
 */
class GoldenDocumentTest {
    private static final double DPI = 72;

    @TempDir
    static Path folder;

    private static SampleStudioDocuments studio;

    @BeforeAll
    static void begin() throws Exception {
        studio = new SampleStudioDocuments(folder);
    }

    @AfterAll
    static void end() {
        studio.close();
    }

    @ParameterizedTest
    @EnumSource(value = DocumentKind.class, names = "CONDITION_REPORT", mode = EnumSource.Mode.EXCLUDE)
    void theFirstPageLooksAsItWasApproved(DocumentKind kind) throws Exception {
        byte[] png = DocumentPaper.png(studio.pdf(kind), 1, DPI);
        String name = kind.code() + ".png";
        String place = System.getProperty("documents.golden", "");
        if (!place.isEmpty()) {
            Files.write(Path.of(place, name), png);
        }
        try (InputStream in = GoldenDocumentTest.class.getResourceAsStream("/documents/" + name)) {
            assertThat(in).as(name).isNotNull();
            BufferedImage golden = ImageIO.read(in);
            BufferedImage found = ImageIO.read(new ByteArrayInputStream(png));
            assertThat(found.getWidth()).isEqualTo(golden.getWidth());
            assertThat(found.getHeight()).isEqualTo(golden.getHeight());
            assertThat(unlike(golden, found)).isLessThan(0.005);
        }
    }

    @Test
    void theComparisonSeesADocumentThatIsNotTheSame() throws Exception {
        BufferedImage one = ImageIO.read(
                new ByteArrayInputStream(DocumentPaper.png(studio.pdf(DocumentKind.LOAN_SCHEDULE), 1, DPI)));
        BufferedImage other = ImageIO.read(
                new ByteArrayInputStream(DocumentPaper.png(studio.pdf(DocumentKind.CONSIGNMENT_SCHEDULE), 1, DPI)));
        assertThat(unlike(one, other)).isGreaterThan(0.02);
    }

    /** The share of pixels that differ by more than a quarter of the scale in green. */
    private static double unlike(BufferedImage a, BufferedImage b) {
        int unlike = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                int difference = Math.abs((a.getRGB(x, y) >> 8 & 0xff) - (b.getRGB(x, y) >> 8 & 0xff));
                unlike += difference > 64 ? 1 : 0;
            }
        }
        return unlike / (double) (a.getWidth() * a.getHeight());
    }
}
