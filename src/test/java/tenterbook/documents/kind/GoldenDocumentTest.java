package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.Approved;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.layout.DocumentPaper;

/**
 * First pages of documents as they were looked at and found good. See {@link Approved} for a wanted change of design.
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
        Approved.words(
                "documents/" + kind.code() + ".txt",
                studio.drafts(kind).get(0).text().words());
        Approved.picture("documents/" + kind.code() + ".png", DocumentPaper.png(studio.pdf(kind), 1, DPI));
    }

    @Test
    void theComparisonSeesADocumentThatIsNotTheSame() throws Exception {
        BufferedImage one = ImageIO.read(
                new ByteArrayInputStream(DocumentPaper.png(studio.pdf(DocumentKind.LOAN_SCHEDULE), 1, DPI)));
        BufferedImage other = ImageIO.read(
                new ByteArrayInputStream(DocumentPaper.png(studio.pdf(DocumentKind.CONSIGNMENT_SCHEDULE), 1, DPI)));
        assertThat(Approved.worstTile(one, other)).isGreaterThan(0.2);
    }
}
