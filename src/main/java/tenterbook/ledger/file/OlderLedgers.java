package tenterbook.ledger.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.slf4j.LoggerFactory;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Copies of ledgers as an older program left them, in the folder {@code older-ledgers}: made before this program changes how such a
 * ledger is built. The last {@value #KEPT} are kept; an erasure deletes them all, since they name whom it erases.
 */
public final class OlderLedgers {
    /** The newest migration; {@code MigrationTest} compares. */
    public static final int SCHEMA = 11;

    static final int KEPT = 3;
    private static final String NAME = "older-ledgers";

    private OlderLedgers() {}

    /**
     * Copies a ledger that will be migrated.
     *
     * @throws ArchiveProblem where it cannot be copied; nothing was changed
     */
    public static void keep(ArchiveFolder archive, Clock clock) {
        Path folder = archive.root().resolve(NAME);
        try (Connection connection = DriverManager.getConnection(
                        "jdbc:sqlite:" + archive.ledger().toAbsolutePath());
                Statement statement = connection.createStatement()) {
            int schema = schema(statement);
            if (schema == 0 || schema >= SCHEMA) {
                return;
            }
            Files.createDirectories(folder);
            Path part = folder.resolve("part");
            Files.deleteIfExists(part);
            try (PreparedStatement copy = connection.prepareStatement("VACUUM INTO ?")) {
                copy.setString(1, part.toString());
                copy.execute();
            }
            Path kept = folder.resolve("ledger-%s-schema-%d.db".formatted(LocalDate.now(clock), schema));
            Files.move(part, kept, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            LoggerFactory.getLogger(OlderLedgers.class)
                    .warn("{}", Message.of("ledger.older-kept", "copy", kept.toAbsolutePath()));
            List<Path> all = all(folder);
            for (Path each : all.subList(0, Math.max(0, all.size() - KEPT))) {
                Files.delete(each);
            }
        } catch (IOException | SQLException e) {
            throw new ArchiveProblem(Message.of("ledger.older-not-kept", "folder", folder, "why", Explained.of(e)), e);
        }
    }

    /** Deletes them, since they hold what was erased. */
    public static void delete(ArchiveFolder archive) {
        try {
            for (Path each : all(archive.root().resolve(NAME))) {
                Files.delete(each);
            }
        } catch (IOException e) {
            throw new ArchiveProblem(
                    Message.of(
                            "ledger.erased-but-file", "folder", archive.root().resolve(NAME), "why", Explained.of(e)),
                    e);
        }
    }

    /** 0 for a new file, and for one of which Flyway knows nothing. */
    private static int schema(Statement statement) throws SQLException {
        try (ResultSet table =
                statement.executeQuery("SELECT 1 FROM sqlite_schema WHERE name = 'flyway_schema_history'")) {
            if (!table.next()) {
                return 0;
            }
        }
        try (ResultSet row = statement.executeQuery(
                "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM flyway_schema_history WHERE success = 1")) {
            return row.next() ? row.getInt(1) : 0;
        }
    }

    /** Oldest first. */
    private static List<Path> all(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().endsWith(".db"))
                    .sorted(Comparator.comparing(file -> file.getFileName().toString()))
                    .toList();
        }
    }
}
