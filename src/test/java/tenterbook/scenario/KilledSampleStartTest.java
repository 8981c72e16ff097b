package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.Thorough;
import tenterbook.archive.Archive;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.Progress;

/** The very first start of the whole program, killed time and again while it fills its folder with the sample studio. */
class KilledSampleStartTest {
    private static final int KILLS = Thorough.times(2, 25);

    @TempDir
    Path around;

    @Test
    void theSampleStudioIsServedWhateverKilledStartsLeft() throws Exception {
        Path studio = around.resolve("archive");
        // What a start without the sample leaves when it is killed.
        ArchiveFolder.hold(studio).close();
        Files.createFile(studio.resolve("ledger.db"));
        Random random = new Random();
        for (int n = 0; n < KILLS; n++) {
            try (ServedChild child = ServedChild.startSample(studio)) {
                Thread.sleep(random.nextLong(300, 4000));
                child.kill();
            }
        }
        try (ServedChild child = ServedChild.startSample(studio)) {
            Client client = child.client();
            assertThat(client.get("/pieces/V24-007").status()).as(child.said()).isEqualTo(200);
            child.end();
            child.ended();
        }
        try (Archive archive = Archive.open(studio, Scenario.CLOCK)) {
            assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
        }
        // One killed in the moment after the folder got its name leaves an empty folder of work behind, and no copy.
        try (Stream<Path> inside = Files.walk(around, 2)) {
            assertThat(inside.filter(path -> path.endsWith("whole"))).isEmpty();
        }
    }
}
