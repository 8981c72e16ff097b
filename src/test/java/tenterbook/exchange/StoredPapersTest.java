package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.ledger.MappedCodec;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Joined;

/** The PDF of issued papers: checked, packed and restored with the archive. */
class StoredPapersTest {
    @TempDir
    Path around;

    private static byte[] pdf(String words) {
        return ("%PDF-1.7 " + words).getBytes(StandardCharsets.UTF_8);
    }

    private static IssuedPaper issue(Archive archive, String id, IssuedPaper.Pdf pdf) {
        IssuedPaper.Issued piece = new IssuedPaper.Issued(new PieceNumber("V24-001"), 1, List.of(), "", List.of());
        IssuedPaper paper = new IssuedPaper(
                id, "hang-tag", "eu", "", List.of(), Instant.EPOCH, List.of(piece), null, List.of(), "", pdf);
        return archive.ledger()
                .write("Inês Valderim", act -> act.create(Kinds.ISSUED_PAPER, paper))
                .record();
    }

    private static Path file(Archive archive, IssuedPaper paper) {
        String hex = paper.pdf().digest().hex();
        return archive.folder().papers().resolve(hex.substring(0, 2)).resolve(hex + ".pdf");
    }

    private static List<String> found(Archive archive) {
        return ArchiveCheck.run(archive, Progress.UNWATCHED).stream()
                .map(Finding::toString)
                .toList();
    }

    @Test
    void aMissingAChangedAndAnUnnamedPaperAreEachTold() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            IssuedPaper one = issue(archive, "paper-1", archive.papers().store(pdf("one")));
            IssuedPaper two = issue(archive, "paper-2", archive.papers().store(pdf("two")));
            issue(archive, "paper-3", null);
            assertThat(found(archive))
                    .as("a paper from before files were stored is whole")
                    .isEmpty();

            archive.papers().store(pdf("of a print that was never saved"));
            Files.delete(file(archive, one));
            Files.write(file(archive, two), pdf("2"));
            assertThat(found(archive))
                    .hasSize(3)
                    .anyMatch(line -> line.startsWith("issued-paper paper-1: its PDF is missing")
                            && line.contains(one.pdf().digest().hex()))
                    .anyMatch(line -> line.startsWith("papers/")
                            && line.contains(two.pdf().digest().hex())
                            && line.contains("is not the file that was taken in"))
                    .anyMatch(line -> line.startsWith("papers/") && line.contains("an orphan: no record names it"));
        }
    }

    @Test
    void anOlderRevisionsFileIsStillNeeded() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            IssuedPaper one = issue(archive, "paper-1", archive.papers().store(pdf("one")));
            IssuedPaper.Pdf other = archive.papers().store(pdf("other"));
            archive.ledger().write("x", act -> act.save(Kinds.ISSUED_PAPER, one.with(other), 1, ""));
            assertThat(found(archive)).isEmpty();
            Files.delete(file(archive, one));
            assertThat(found(archive)).singleElement().asString().contains("its PDF is missing");
        }
    }

    @Test
    void papersAreInTheBagAndComeBackFromIt() throws IOException {
        IssuedPaper one;
        Bag bag;
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            one = issue(archive, "paper-1", archive.papers().store(pdf("one")));
            bag = new Pack(Demo.CLOCK).pack(archive, around.resolve("bag"), Progress.UNWATCHED);
        }
        String hex = one.pdf().digest().hex();
        assertThat(bag.folder().resolve("data/papers/%s/%s.pdf".formatted(hex.substring(0, 2), hex)))
                .hasBinaryContent(pdf("one"));
        assertThat(bag.photos()).isEqualTo(3);
        assertThat(Files.readString(bag.folder().resolve("data/READ-ME-FIRST.txt")))
                .contains("1 papers", "papers/ab/")
                .doesNotContain("{{");
        Restored restored = new Restore(Demo.CLOCK).restore(bag.folder(), around.resolve("again"), Progress.UNWATCHED);
        assertThat(restored.notes()).isEmpty();
        try (Archive again = Archive.open(around.resolve("again"), Demo.CLOCK)) {
            assertThat(again.papers().read(one.pdf())).isEqualTo(pdf("one"));
            assertThat(found(again)).isEmpty();
        }
    }

    @Test
    void aBagWithAMissingPaperIsNeitherPackedNorRestoredUnlessDamageIsAllowed() throws IOException {
        Bag bag;
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            IssuedPaper one = issue(archive, "paper-1", archive.papers().store(pdf("one")));
            Files.delete(file(archive, one));
            assertThatThrownBy(() -> new Pack(Demo.CLOCK).pack(archive, around.resolve("bag"), Progress.UNWATCHED))
                    .isInstanceOf(PackRefused.class)
                    .hasMessageContaining("issued-paper paper-1: its PDF is missing");
            bag = new Pack(Demo.CLOCK).pack(archive, around.resolve("bag"), DamageAdvice.NOTED, Progress.UNWATCHED);
        }
        Restore restore = new Restore(Demo.CLOCK);
        assertThatThrownBy(() -> restore.restore(bag.folder(), around.resolve("again"), Progress.UNWATCHED))
                .isInstanceOf(BagRefused.class)
                .hasMessageContaining("its PDF is missing");
        assertThat(restore.restore(bag.folder(), around.resolve("again"), DamageAdvice.NOTED, Progress.UNWATCHED)
                        .damage())
                .hasSize(1);
    }

    @Test
    void theFileOfAPaperThatThisProgramCannotReadIsNamedAllTheSame() throws IOException {
        Kind<ObjectNode> newer = new Kind<>(
                Kinds.ISSUED_PAPER.name(),
                Joined.with("", "paper"),
                new MappedCodec<>(new ObjectMapper(), ObjectNode.class),
                paper -> paper.get("id").textValue(),
                paper -> List.of());
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            String hex = archive.papers().store(pdf("one")).digest().hex();
            ObjectNode paper = new ObjectMapper()
                    .createObjectNode()
                    .put("id", "paper-1")
                    .put("kind", "hang-tag")
                    .put("issuedAt", "in a newer way");
            paper.putObject("pdf").put("digest", hex);
            archive.ledger().write("x", act -> act.create(newer, paper));
            assertThat(found(archive)).isNotEmpty().noneMatch(line -> line.contains("orphan"));
        }
    }
}
