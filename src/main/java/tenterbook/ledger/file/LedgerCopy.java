package tenterbook.ledger.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.stream.Stream;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;

/** A copy of a ledger's file in a temporary folder, with its write-ahead log and journal if any; deleted when closed. */
record LedgerCopy(TemporaryFolder around) implements AutoCloseable {
    private static final String PURPOSE = "tenterbook-ledger";

    static LedgerCopy of(Path ledger) throws IOException {
        LedgerCopy copy = new LedgerCopy(new TemporaryFolder(PURPOSE));
        Path folder = copy.folder();
        try {
            Files.copy(ledger, copy.file());
            for (String ending : List.of("-wal", "-journal")) {
                Path beside = ledger.resolveSibling(ledger.getFileName() + ending);
                if (Files.exists(beside)) {
                    Files.copy(beside, folder.resolve("ledger.db" + ending));
                }
            }
            // The copy of a read-only file may be read-only.
            try (Stream<Path> files = Files.list(folder)) {
                files.forEach(each -> each.toFile().setWritable(true));
            }
            return copy;
        } catch (IOException e) {
            copy.close();
            throw e;
        }
    }

    /** A copy that SQLite makes of one moment, also while the ledger is written; with the note of its extent from before. */
    static LedgerCopy ofMoment(Path ledger) throws IOException, SQLException {
        LedgerCopy copy = new LedgerCopy(new TemporaryFolder(PURPOSE));
        Path folder = copy.folder();
        Path note = ledger.resolveSibling(LastWritten.NAME);
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(30_000);
        try {
            if (Files.exists(note)) {
                Files.copy(note, folder.resolve(LastWritten.NAME));
            }
            try (Connection connection = config.createConnection("jdbc:sqlite:" + ledger.toAbsolutePath());
                    PreparedStatement statement = connection.prepareStatement("VACUUM INTO ?")) {
                statement.setString(1, copy.file().toString());
                statement.execute();
            }
            return copy;
        } catch (IOException | SQLException e) {
            copy.close();
            throw e;
        }
    }

    /** Where other files may be written that would otherwise go into the archive's folder. */
    Path folder() {
        return around.path();
    }

    Path file() {
        return folder().resolve("ledger.db");
    }

    /**
     * Copies what is derived, so that it need not be made anew. Where that fails, as for lack of room, nothing of it is copied:
     * it is made anew.
     */
    void addDerived(Path from) throws IOException {
        Path to = folder().resolve(from.getFileName());
        try (Stream<Path> files = Files.isDirectory(from) ? Files.walk(from) : Stream.empty()) {
            for (Path each : files.toList()) {
                Files.copy(each, to.resolve(from.relativize(each).toString()));
            }
        } catch (IOException | UncheckedIOException e) {
            LoggerFactory.getLogger(LedgerCopy.class).info("{} was not copied and is made anew", from, e);
            TemporaryFolder.delete(to);
        }
    }

    @Override
    public void close() throws IOException {
        around.close();
    }
}
