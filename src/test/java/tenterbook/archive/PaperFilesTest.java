package tenterbook.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.measure.Digest;

class PaperFilesTest {
    private static final byte[] PDF = "%PDF-1.7 a tag".getBytes(StandardCharsets.UTF_8);

    @TempDir
    Path around;

    private Path folder() {
        return around.resolve("papers");
    }

    private Path file() {
        String hex = Digest.of(PDF).hex();
        return folder().resolve(hex.substring(0, 2)).resolve(hex + ".pdf");
    }

    @Test
    void aPaperLiesUnderItsDigestByteForByteAndTwiceIsOnce() throws IOException {
        PaperFiles files = new PaperFiles(folder());
        assertThat(folder()).doesNotExist();
        IssuedPaper.Pdf pdf = files.store(PDF);
        assertThat(pdf).isEqualTo(new IssuedPaper.Pdf(Digest.of(PDF), PDF.length));
        assertThat(file()).hasBinaryContent(PDF);
        assertThat(files.read(pdf)).isEqualTo(PDF);
        assertThat(files.store(PDF)).isEqualTo(pdf);
        assertThat(folder().resolve("arriving")).isEmptyDirectory();
    }

    @Test
    void aMissingOrChangedFileIsNeverSent() throws IOException {
        PaperFiles files = new PaperFiles(folder());
        IssuedPaper.Pdf pdf = files.store(PDF);
        Files.writeString(file(), "%PDF-1.7 a bag");
        assertThatThrownBy(() -> files.read(pdf))
                .isInstanceOf(ArchiveProblem.class)
                .hasMessageContainingAll(pdf.digest().hex(), "has been changed", "older bag");
        Files.delete(file());
        assertThatThrownBy(() -> files.read(pdf))
                .isInstanceOf(ArchiveProblem.class)
                .hasMessageContaining("is missing");
        files.store(PDF);
        assertThat(files.read(pdf)).isEqualTo(PDF);
    }

    @Test
    void whatAKilledProgramLeftHalfWayIsCleared() throws IOException {
        Files.createDirectories(folder().resolve("arriving"));
        Files.writeString(folder().resolve("arriving/half.part"), "%PDF");
        new PaperFiles(folder()).store(PDF);
        assertThat(folder().resolve("arriving")).isEmptyDirectory();
    }
}
