package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Database;

/** A limit on the ledger's pages stands for a full disk: SQLite answers both with SQLITE_FULL. */
class FullDiskTest {
    @TempDir
    Path folder;

    private static void keep(Database database, String name, int length) {
        database.write(handle -> handle.execute("INSERT INTO drafts VALUES (?, ?, 'now')", name, "x".repeat(length)));
    }

    private static int drafts(Database database) {
        return database.read(handle -> handle.createQuery("SELECT count(*) FROM drafts")
                .mapTo(Integer.class)
                .one());
    }

    @Test
    void aFullDiskIsToldInASentenceNothingIsHalfAndLaterAllGoesOn() {
        try (Database database = new Database(folder.resolve("ledger.db"))) {
            keep(database, "before", 10);
            database.write(handle -> handle.execute("PRAGMA max_page_count = 60"));
            assertThatThrownBy(() -> keep(database, "too much", 1_000_000))
                    .isInstanceOf(ArchiveProblem.class)
                    .hasMessage(
                            "Nothing was saved: the disk that holds the archive has no room left. Make room on it and try again.");
            assertThat(drafts(database)).isEqualTo(1);
            database.write(handle -> handle.execute("PRAGMA max_page_count = 100000"));
            keep(database, "later", 1_000_000);
            assertThat(drafts(database)).isEqualTo(2);
        }
    }

    @Test
    void afterAFullDiskAnActIsStillAllOrNothing() {
        try (Database database = new Database(folder.resolve("ledger.db"))) {
            database.write(handle -> handle.execute("PRAGMA max_page_count = 60"));
            assertThatThrownBy(() -> keep(database, "too much", 1_000_000)).isInstanceOf(ArchiveProblem.class);
            assertUndone(database);
        }
    }

    @Test
    void afterTheLedgerWasHeldByAnotherProgramAnActIsStillAllOrNothing() throws SQLException {
        Path file = folder.resolve("ledger.db");
        try (Database database = new Database(file)) {
            try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
                    Statement statement = other.createStatement()) {
                statement.execute("BEGIN IMMEDIATE");
                assertThatThrownBy(() -> keep(database, "meanwhile", 10)).isInstanceOf(ArchiveProblem.class);
                statement.execute("ROLLBACK");
            }
            assertUndone(database);
        }
    }

    private static void assertUndone(Database database) {
        assertThatThrownBy(() -> database.write(handle -> {
                    handle.execute("INSERT INTO drafts VALUES ('half', '', 'now')");
                    throw new IllegalStateException("the second half fails");
                }))
                .hasMessage("the second half fails");
        assertThat(drafts(database)).as("the first half is undone").isZero();
        keep(database, "whole", 10);
        assertThat(drafts(database)).isEqualTo(1);
    }

    @Test
    void aMistakeOfTheProgramIsNoDiskTrouble() {
        try (Database database = new Database(folder.resolve("ledger.db"))) {
            keep(database, "once", 10);
            assertThatThrownBy(() -> keep(database, "once", 10)).isNotInstanceOf(ArchiveProblem.class);
        }
    }
}
