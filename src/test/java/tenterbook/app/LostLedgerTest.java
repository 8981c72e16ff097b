package tenterbook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.app.Ran.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.Pack;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.Progress;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.material.Source;

/** An archive whose ledger is gone is refused by every command, and a folder that was never used is filled. */
@Timeout(300) // A ‘serve’ that refuses nothing would never end.
class LostLedgerTest {
    @TempDir
    Path around;

    private Path studio() throws IOException {
        Path studio = around.resolve("studio");
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            archive.ledger()
                    .write(
                            "Inês Valderim",
                            act -> act.create(
                                    Kinds.LOT,
                                    new Lot(
                                            new LotId("woad-1"),
                                            Role.DYE,
                                            "woad",
                                            Source.BOTANICAL,
                                            "",
                                            "",
                                            "",
                                            "",
                                            "",
                                            null,
                                            null,
                                            null,
                                            "",
                                            null)));
        }
        Path photo = studio.resolve("photos/ab/abcd.jpg");
        Files.createDirectories(photo.getParent());
        Files.writeString(photo, "stands for a photograph");
        return studio;
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.map(Path::toString)
                    .filter(name -> !name.endsWith("in-use.lock"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void everyCommandRefusesAnArchiveWhoseLedgerIsGoneAndChangesNothing(boolean leaveEmpty) throws IOException {
        Path studio = studio();
        Files.delete(studio.resolve("ledger.db"));
        if (leaveEmpty) {
            Files.createFile(studio.resolve("ledger.db"));
        }
        List<String> before = names(studio);
        for (Object[] words : new Object[][] {
            {"serve", "--archive", studio, "--port", "0"},
            {"serve", "--archive", studio, "--port", "0", "--sample"},
            {"check", "--archive", studio},
            {"reindex", "--archive", studio},
            {"pack", "--archive", studio, "--to", around.resolve("bag")},
            {"photos", "--archive", studio, "--from", around}
        }) {
            Ran ran = run(words);
            assertThat(ran.code()).as(words[0] + ": " + ran.out() + ran.err()).isEqualTo(3);
            assertThat(ran.err())
                    .contains("The ledger of the archive in " + studio + " is gone")
                    .contains("Nothing was changed");
            assertThat(names(studio)).isEqualTo(before);
        }
        assertThat(around.resolve("bag")).doesNotExist();
    }

    @Test
    void aFolderOfAKilledFirstStartHoldsNoArchiveYetAndIsLeftAlone() throws IOException {
        Path folder = around.resolve("half");
        ArchiveFolder.hold(folder).close();
        Files.createFile(folder.resolve("ledger.db"));
        Ran ran = run("check", "--archive", folder);
        assertThat(ran.code()).isEqualTo(3);
        assertThat(ran.err()).contains("There is no archive in").contains("serve");
        assertThat(folder.resolve("ledger.db")).isEmptyFile();
    }

    @Test
    void aBagIsRestoredIntoTheFolderOfAKilledFirstStartAndIntoNoOther() throws IOException {
        Path studio = studio();
        Files.delete(studio.resolve("photos/ab/abcd.jpg"));
        Path bag = around.resolve("bag");
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            new Pack(Clock.systemUTC()).pack(archive, bag, Progress.UNWATCHED);
        }
        Path folder = around.resolve("half");
        ArchiveFolder.hold(folder).close();
        Files.createFile(folder.resolve("ledger.db"));
        assertThat(run("restore", "--from", bag, "--archive", folder).code()).isZero();
        assertThat(run("check", "--archive", folder).code()).isZero();

        byte[] ledger = Files.readAllBytes(studio.resolve("ledger.db"));
        Ran ran = run("restore", "--from", bag, "--archive", studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).contains("is not empty");
        assertThat(Files.readAllBytes(studio.resolve("ledger.db"))).isEqualTo(ledger);
    }
}
