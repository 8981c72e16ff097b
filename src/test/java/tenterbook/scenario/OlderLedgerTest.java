package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.exchange.Pack;
import tenterbook.exchange.PackRefused;
import tenterbook.imaging.Photo;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;

/** What a start does about a ledger that was put back, and about originals that a killed program left. */
class OlderLedgerTest extends Scenario {
    private Path folder() {
        return around.resolve("studio");
    }

    private void again() {
        wiring.close();
        serve();
    }

    @Test
    void anOlderLedgerThatWasPutBackIsReportedUntilItIsAccepted() throws IOException {
        saved("/pieces", "number", "V24-001");
        wiring.close();
        Files.copy(folder().resolve("ledger.db"), around.resolve("older.db"));
        serve();
        saved("/pieces", "number", "V24-002");
        wiring.close();
        Files.copy(around.resolve("older.db"), folder().resolve("ledger.db"), StandardCopyOption.REPLACE_EXISTING);
        serve();
        assertThat(ArchiveCheck.atStart(wiring.archive()))
                .singleElement()
                .satisfies(finding -> assertThat(finding.consequence()).isEqualTo(Consequence.BEHIND));
        assertThat(client.get("/studio").words())
                .contains("ends before revision 2")
                .contains("What is safe: everything in this older ledger");

        // Other revisions take the place of the lost ones, and the ledger is still another.
        saved("/pieces", "number", "V24-003");
        saved("/pieces", "number", "V24-004");
        again();
        assertThat(ArchiveCheck.run(wiring.archive(), Progress.UNWATCHED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.what()).contains("has another revision 2 than the one"));
        Pack pack = new Pack(CLOCK);
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> pack.pack(wiring.archive(), around.resolve("bag"), Progress.UNWATCHED))
                .isInstanceOf(PackRefused.class)
                .hasMessageContaining("another revision 2");

        wiring.archive().ledger().acceptAsLast();
        again();
        assertThat(ArchiveCheck.run(wiring.archive(), Progress.UNWATCHED)).isEmpty();
    }

    @Test
    void anOriginalThatAKilledProgramLeftJoinsThoseThatWaitAndTheCheckIsClean() throws Exception {
        saved("/pieces", "number", "V24-001");
        byte[] jpeg = Pictures.jpeg(7);
        Digest digest = Digest.of(jpeg);
        Path file = folder().resolve("photos/" + digest.hex().substring(0, 2) + "/" + digest.hex() + ".jpg");
        Files.createDirectories(file.getParent());
        Files.write(file, jpeg);
        assertThat(ArchiveCheck.run(wiring.archive(), Progress.UNWATCHED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.consequence()).isEqualTo(Consequence.UNNAMED));
        again();
        List<Saved<Photo>> waiting = waiting();
        assertThat(waiting)
                .singleElement()
                .satisfies(photo -> assertThat(photo.record().digest()).isEqualTo(digest));
        assertThat(ArchiveCheck.run(wiring.archive(), Progress.UNWATCHED))
                .extracting(Finding::toString)
                .isEmpty();
    }

    @Test
    void nothingJoinsALedgerThatIsOlderThanTheOneWrittenHere() throws Exception {
        anOriginalThatAKilledProgramLeftJoinsThoseThatWaitAndTheCheckIsClean();
        Path note = folder().resolve("last-written");
        Files.writeString(note, "99 " + "ab".repeat(32) + "\n");
        byte[] jpeg = Pictures.jpeg(8);
        Digest digest = Digest.of(jpeg);
        Path file = folder().resolve("photos/" + digest.hex().substring(0, 2) + "/" + digest.hex() + ".jpg");
        Files.createDirectories(file.getParent());
        Files.write(file, jpeg);
        wiring.close();
        serve();
        wiring.close();
        serve();
        assertThat(wiring.archive().ledger().allIdsEverUsed(Kinds.PHOTO)).doesNotContain(digest.hex());
    }

    /** Closing waits for the work of the start, so that two starts need no waiting. */
    private List<Saved<Photo>> waiting() throws InterruptedException {
        for (int tries = 0; tries < 400; tries++) {
            List<Saved<Photo>> waiting = wiring.archive().ledger().unreferenced(Kinds.PHOTO, Kinds.PIECE);
            if (!waiting.isEmpty()) {
                return waiting;
            }
            Thread.sleep(50);
        }
        return List.of();
    }
}
