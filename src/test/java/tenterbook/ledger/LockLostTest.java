package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;

class LockLostTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void withoutItsLockFileNothingIsSavedAndWhatWasSavedStaysReadable(boolean replaced) throws Exception {
        try (ArchiveFolder held = ArchiveFolder.hold(folder);
                Ledger ledger = Ledger.open(held, Clock.systemUTC(), List.of(Things.BOARD))) {
            ledger.write("Inês", act -> act.create(Things.BOARD, new Things.Board("one", "")));
            Files.delete(folder.resolve("in-use.lock"));
            if (replaced) {
                Files.createFile(folder.resolve("in-use.lock"));
            }
            assertThatThrownBy(() -> ledger.write("Inês", act -> act.create(Things.BOARD, new Things.Board("two", ""))))
                    .isInstanceOf(ArchiveProblem.class)
                    .hasMessageContaining("was deleted or replaced")
                    .hasMessageContaining("Nothing was saved");
            assertThat(ledger.lastSequence()).isEqualTo(1);
            assertThat(ledger.find(Things.BOARD, "one")).isPresent();
        }
    }
}
