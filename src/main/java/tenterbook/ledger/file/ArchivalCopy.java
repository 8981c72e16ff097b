package tenterbook.ledger.file;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/** Prepares a copied ledger for long keeping: one file, no write-ahead log, no drafts, no removed searches. */
public final class ArchivalCopy {
    private ArchivalCopy() {}

    /**
     * Deletes the drafts and the search that was removed last, rewrites the file so that no trace of them stays in it, and leaves it in a mode that opens from a
     * read-only disc.
     *
     * @return the newest sequence in the copy, 0 for an empty ledger
     * @throws ArchiveProblem if the copy cannot be settled
     */
    public static long settle(Path copy) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + copy.toAbsolutePath());
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = DELETE");
            statement.execute("DELETE FROM drafts");
            statement.execute("DELETE FROM saved_searches WHERE removed_at IS NOT NULL");
            statement.execute("VACUUM");
            try (var row = statement.executeQuery("SELECT coalesce(max(sequence), 0) FROM revisions")) {
                row.next();
                return row.getLong(1);
            }
        } catch (SQLException e) {
            throw new ArchiveProblem(
                    Message.of("ledger.not-settled", "copy", copy.toAbsolutePath(), "why", Explained.of(e)), e);
        }
    }
}
