package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Revision;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;

/** What an erasure does to the PDF of issued papers. */
class ErasedPapersTest {
    private static final String REASON = "asked for by the person";

    @TempDir
    Path root;

    private IssuedPaper naming;
    private IssuedPaper other;
    private IssuedPaper typed;
    private IssuedPaper chosen;

    @BeforeEach
    void fill() throws IOException {
        try (Archive archive = Archive.open(root, Things.CLOCK)) {
            archive.ledger()
                    .write(
                            "Inês",
                            act -> act.create(
                                    Kinds.PARTY,
                                    new Party(new PartyId("buyer-1"), People.NAME, "buyer", People.CONTACT, "")));
            naming = issue(archive, "paper-1", "Lent to " + People.NAME, "");
            other = issue(archive, "paper-2", "Lent to Sala Vermia", "");
            typed = issue(archive, "paper-3", "Lent", People.NAME);
            chosen = issue(archive, "paper-4", "Lent to nobody named", "buyer-1");
        }
    }

    private static IssuedPaper issue(Archive archive, String id, String words, String party) throws IOException {
        ObjectNode settings = JsonNodeFactory.instance.objectNode();
        ObjectNode agreement =
                settings.putObject("document").put("kind", "loan-schedule").putObject("agreement");
        agreement
                .put("party", party)
                .put("contact", true)
                .put("from", "2024-03-05")
                .put("terms", "Kept dark.");
        IssuedPaper.Pdf pdf = archive.papers().store(("%PDF " + words + party).getBytes(StandardCharsets.UTF_8));
        IssuedPaper paper = new IssuedPaper(
                id,
                "loan-schedule",
                "",
                "",
                List.of(),
                Instant.EPOCH,
                List.of(),
                settings,
                List.of(new IssuedPaper.Line("party", words, "")),
                "",
                pdf);
        return archive.ledger()
                .write("Inês", act -> act.create(Kinds.ISSUED_PAPER, paper))
                .record();
    }

    private Path file(IssuedPaper paper) {
        return HashedFiles.path(root.resolve("papers"), paper.pdf().digest(), "pdf");
    }

    private static IssuedPaper now(Archive archive, IssuedPaper paper) {
        return archive.ledger()
                .find(Kinds.ISSUED_PAPER, paper.id())
                .orElseThrow()
                .record();
    }

    @Test
    void thePdfOfEachPaperThatNamesThePersonIsDeletedAndCounted() throws IOException {
        try (Archive archive = Archive.open(root, Things.CLOCK)) {
            Erased erased = archive.ledger().erase("Inês", Kinds.PARTY, "buyer-1", REASON);
            assertThat(erased.files()).isEqualTo(3);
            assertThat(file(naming)).doesNotExist();
            assertThat(file(typed)).as("named in the settings alone").doesNotExist();
            assertThat(file(chosen)).as("chosen from the parties").doesNotExist();
            assertThat(archive.papers().read(other.pdf())).isNotEmpty();
            assertThat(now(archive, naming).pdf()).isNull();
            assertThat(now(archive, other)).isEqualTo(other);
            assertThat(archive.ledger().erasedFrom(Kinds.ISSUED_PAPER.key("paper-1")))
                    .isTrue();
            assertThat(archive.ledger().erasedFrom(Kinds.ISSUED_PAPER.key("paper-2")))
                    .isFalse();
            assertThat(archive.ledger().check().run(Progress.UNWATCHED)).isEmpty();
            for (Revision revision : archive.ledger().after(0, 100)) {
                assertThat(revision.json()).doesNotContain(naming.pdf().digest().hex());
            }
        }
    }

    @Test
    void aPaperTakenOutOfUseLosesItsPdfTooAndAPdfThatNoRecordNames() throws IOException {
        try (Archive archive = Archive.open(root, Things.CLOCK)) {
            archive.ledger().write("Inês", act -> {
                act.withdraw(Kinds.ISSUED_PAPER, "paper-1", 1, "");
                return null;
            });
            archive.papers().store("%PDF laid out, never issued".getBytes(StandardCharsets.UTF_8));
            Path part = root.resolve("papers/arriving/broken-off.part");
            Files.writeString(part, "%PDF half of " + People.NAME);
            assertThat(archive.ledger()
                            .erase("Inês", Kinds.PARTY, "buyer-1", REASON)
                            .files())
                    .isEqualTo(5);
            assertThat(file(naming)).doesNotExist();
            assertThat(part).doesNotExist();
            assertThat(file(other)).exists();
        }
    }

    @Test
    void aProgramKilledBeforeTheFileWasDeletedDeletesItAtTheNextStart() {
        try (Archive archive = Archive.open(root, Things.CLOCK)) {
            archive.ledger().write("Inês", act -> act.erase(Kinds.PARTY, "buyer-1", REASON));
        }
        assertThat(file(naming)).exists();
        try (Archive archive = Archive.open(root, Things.CLOCK)) {
            assertThat(file(naming)).doesNotExist();
            assertThat(file(other)).exists();
            assertThat(archive.ledger().check().run(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void anErasedPapersDigestAndSettingsAreInNoPublicPart() {
        try (Archive archive = Archive.open(root, Things.CLOCK)) {
            Revision issued =
                    archive.ledger().history(Kinds.ISSUED_PAPER.key("paper-1")).get(0);
            assertThat(issued.json()).contains(naming.pdf().digest().hex(), "loan-schedule");
            assertThat(issued.publicText().orElseThrow())
                    .doesNotContain(naming.pdf().digest().hex())
                    .doesNotContain("bytes", "settings", "document", "Lent");
        }
    }

    @Test
    void thePartyChosenForAScheduleIsTakenOutWithItsTermsAndIsInNoFile() throws IOException {
        try (Archive archive = Archive.open(root, Things.CLOCK)) {
            archive.ledger().erase("Inês", Kinds.PARTY, "buyer-1", REASON);
            ObjectNode agreement = JsonNodeFactory.instance.objectNode().put("from", "2024-03-05");
            assertThat(now(archive, chosen).settings().at("/document/agreement"))
                    .as("neither party nor terms")
                    .isEqualTo(agreement);
            assertThat(now(archive, other).settings()).as("another's paper").isEqualTo(other.settings());
            assertThat(archive.ledger().check().run(Progress.UNWATCHED)).isEmpty();
        }
        for (Path file : List.of(root.resolve("ledger.db"), root.resolve("ledger.db-wal"))) {
            String bytes = Files.exists(file) ? Files.readString(file, StandardCharsets.ISO_8859_1) : "";
            assertThat(bytes).doesNotContain("buyer-1", People.NAME);
        }
    }
}
