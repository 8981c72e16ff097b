package tenterbook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.app.open.ArchivePlace;
import tenterbook.archive.Archive;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.web.server.FirstStartPage.Beginning;
import tenterbook.words.Refusal;

class ArchiveOpeningTest {
    @TempDir
    Path home;

    private ArchivePlace place;

    @BeforeEach
    void atHome() {
        place = ArchivePlace.of("Linux", Map.of(), home);
    }

    private ArchiveOpening opening() {
        return new ArchiveOpening(place, 0, new PrintWriter(new StringWriter()), () -> {});
    }

    @Test
    void anEmptyArchiveIsBegunServedAndItsPlaceRemembered() {
        Path chosen = home.resolve("dyed/archive");
        try (ArchiveOpening opening = opening()) {
            String address = opening.choose("~/dyed/archive", Beginning.EMPTY);
            assertThat(address).startsWith("http://127.0.0.1:");
            assertThat(opening.servesItself()).isTrue();
            assertThat(chosen.resolve("port")).content().startsWith(address.replaceFirst(".*:", "") + " ");
            assertThat(opening.choose("~/dyed/archive", Beginning.EMPTY))
                    .as("pressed twice")
                    .isEqualTo(address);
        }
        assertThat(chosen.resolve("port")).doesNotExist();
        assertThat(place.folder()).isEqualTo(chosen);
        assertThat(LedgerFile.in(chosen).begun()).isTrue();
    }

    @Test
    void aFolderWithOtherThingsIsRefusedAndStaysAsItIs() throws IOException {
        Files.writeString(home.resolve("notes.txt"), "four dips");
        try (ArchiveOpening opening = opening()) {
            assertThatThrownBy(() -> opening.choose("~", Beginning.SAMPLE))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("other things");
            assertThat(opening.servesItself()).isFalse();
        }
        assertThat(home).isDirectoryNotContaining("glob:**/ledger.db");
        assertThat(place.remembered()).isEmpty();
    }

    @Test
    void anArchiveThatIsThereIsOpenedAsItIsWhateverIsChosenForANewOne() {
        Path chosen = home.resolve("archive");
        Archive.open(chosen, Clock.systemUTC()).close();
        try (ArchiveOpening opening = opening()) {
            opening.choose(chosen.toString(), Beginning.SAMPLE);
        }
        try (Archive archive = Archive.open(chosen, Clock.systemUTC())) {
            assertThat(archive.ledger().lastSequence()).isZero();
        }
    }

    @Test
    void aFolderThatCannotBeMadeIsAProblemAndNotRemembered() throws IOException {
        Files.writeString(home.resolve("file"), "");
        try (ArchiveOpening opening = opening()) {
            assertThatThrownBy(() -> opening.choose("~/file/archive", Beginning.EMPTY))
                    .isInstanceOf(ArchiveProblem.class);
        }
        assertThat(place.remembered()).isEmpty();
    }
}
