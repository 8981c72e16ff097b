package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;

/** An archive that is only looked at, as one on a read-only disc: it is checked whole, and nothing in its folder changes. */
class LookedAtTest {
    @TempDir
    Path around;

    private Path studio;

    @BeforeEach
    void fill() throws IOException {
        studio = around.resolve("studio");
        Demo.open(studio).close();
    }

    private Map<String, String> bytes() throws IOException {
        Map<String, String> bytes = new TreeMap<>();
        try (Stream<Path> paths = Files.walk(studio)) {
            for (Path path : paths.toList()) {
                bytes.put(
                        studio.relativize(path).toString(),
                        Files.isDirectory(path)
                                ? ""
                                : Digest.of(Files.readAllBytes(path)).hex());
            }
        }
        return bytes;
    }

    private void isWholeAndLeftAsItIs(int revisions) throws IOException {
        Map<String, String> before = bytes();
        try (Archive archive = Archive.look(studio, Demo.CLOCK)) {
            assertThat(archive.folder().readOnly()).isTrue();
            assertThat(archive.ledger().lastSequence()).isEqualTo(revisions);
            assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
        }
        assertThat(bytes()).isEqualTo(before);
    }

    @Test
    void aFolderWithoutALockFileIsCheckedAndNoneIsMade() throws IOException {
        Files.delete(studio.resolve("in-use.lock"));
        isWholeAndLeftAsItIs(11);
        assertThat(studio.resolve("in-use.lock")).doesNotExist();
    }

    @Test
    void whatStandsInTheLogAloneIsCheckedToo() throws Exception {
        Path killed = around.resolve("killed");
        try (Archive archive = Archive.open(studio, Demo.CLOCK)) {
            archive.ledger().write("Inês", act -> act.create(Kinds.BOARD_PAIR, Demo.board("B21", "last")));
            // As a killed process leaves it.
            Files.createDirectory(killed);
            for (String name : new String[] {"ledger.db", "ledger.db-wal"}) {
                Files.copy(studio.resolve(name), killed.resolve(name));
            }
        }
        for (String name : new String[] {"ledger.db", "ledger.db-wal"}) {
            Files.deleteIfExists(studio.resolve(name));
            Files.copy(killed.resolve(name), studio.resolve(name));
        }
        isWholeAndLeftAsItIs(12);
    }

    @Test
    void anArchiveOfAnOlderProgramIsCheckedAndNotMigrated() throws IOException {
        studio = around.resolve("old");
        Files.createDirectory(studio);
        try (Stream<Path> files = Files.walk(Path.of("sample-archive/data/photos"))) {
            for (Path file : files.toList()) {
                Path to = studio.resolve("photos")
                        .resolve(Path.of("sample-archive/data/photos").relativize(file));
                Files.copy(file, to);
            }
        }
        Files.copy(
                Path.of("src/test/resources/tenterbook/exchange/format-1-bag/data/ledger.db"),
                studio.resolve("ledger.db"));
        Map<String, String> before = bytes();
        try (Archive archive = Archive.look(studio, Demo.CLOCK)) {
            assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
        }
        assertThat(bytes()).isEqualTo(before);
    }

    @Test
    void aChangeIsFound() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + studio.resolve("ledger.db"));
                Statement statement = connection.createStatement()) {
            statement.execute("DROP TRIGGER revisions_are_never_changed");
            statement.execute("UPDATE revisions SET record = replace(record, 'figueira', 'oliveira')");
        }
        try (Archive archive = Archive.look(studio, Demo.CLOCK)) {
            assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED))
                    .anyMatch(finding -> finding.toString().contains("its public part does not give its digest"));
        }
    }

    @Test
    void anArchiveThatIsOpenOrNotThereIsRefused() {
        try (Archive open = Archive.open(studio, Demo.CLOCK)) {
            assertThatThrownBy(() -> Archive.look(open.folder().root(), Demo.CLOCK))
                    .isInstanceOf(ArchiveProblem.class)
                    .hasMessageContaining("is already open");
        }
        assertThatThrownBy(() -> Archive.look(around.resolve("none"), Demo.CLOCK))
                .isInstanceOf(ArchiveProblem.class)
                .hasMessageContaining("cannot be read");
        assertThat(around.resolve("none")).doesNotExist();
    }

    @Test
    void anErasureNotYetFinishedDeletesNothing() throws Exception {
        Path paper = studio.resolve("papers/ab/unnamed.pdf");
        Files.createDirectories(paper.getParent());
        Files.writeString(paper, "%PDF");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + studio.resolve("ledger.db"));
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA user_version = 1");
        }
        Map<String, String> before = bytes();
        Archive.look(studio, Demo.CLOCK).close();
        assertThat(bytes()).isEqualTo(before);
    }

    @Test
    void aFolderThatCannotBeWrittenIsLookedAt() throws IOException {
        assertThat(studio.toFile().setWritable(false)).isTrue();
        try {
            assumeFalse(Files.isWritable(studio), "Skipped: this user may write a read-only folder");
            isWholeAndLeftAsItIs(11);
        } finally {
            assertThat(studio.toFile().setWritable(true)).isTrue();
        }
    }
}
