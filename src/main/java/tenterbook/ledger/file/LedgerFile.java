package tenterbook.ledger.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import tenterbook.words.Explained;
import tenterbook.words.Joined;
import tenterbook.words.Message;

/**
 * The file of a ledger before it is opened: whether it has a ledger, whether a new one may be created, and whether one was
 * lost. Checking changes no byte of it.
 *
 * <p>A first start that was killed leaves a file without tables, with or without a journal or write-ahead log, and nothing else
 * of an archive: the folders beside it are filled only once the ledger is whole. So an unfinished ledger beside photographs,
 * previews or an index is not a first start but a loss.
 */
public final class LedgerFile {
    /** What was found at the ledger's path. */
    private enum State {
        MISSING("ledger.lost.missing"),
        EMPTY("ledger.lost.empty"),
        NO_TABLES("ledger.lost.no-tables"),
        LEDGER("");

        /** Message key of the problem; empty for none. */
        private final String key;

        State(String key) {
            this.key = key;
        }
    }

    private static final Set<String> OF_A_FIRST_START =
            Set.of("in-use.lock", "ledger.db", "ledger.db-wal", "ledger.db-shm", "ledger.db-journal");

    private final Path root;
    private final Path file;

    private LedgerFile(Path root) {
        this.root = root.toAbsolutePath().normalize();
        this.file = this.root.resolve("ledger.db");
    }

    public static LedgerFile in(Path root) {
        return new LedgerFile(root);
    }

    /**
     * Whether there is a ledger, with revisions or without.
     *
     * @throws ArchiveProblem if the file is damaged or another program's, or if the ledger is lost
     */
    public boolean begun() {
        refuseBag();
        State state = state();
        if (state != State.LEDGER) {
            refuseLoss(state);
        }
        return state == State.LEDGER;
    }

    /**
     * Whether the folder is missing or empty, or holds only what a first start leaves when it is killed.
     *
     * @throws ArchiveProblem if the ledger's file is damaged or another program's
     */
    public boolean folderUnused() throws IOException {
        if (!Files.exists(root)) {
            return true;
        }
        try (Stream<Path> inside = Files.list(root)) {
            if (!inside.map(path -> path.getFileName().toString()).allMatch(OF_A_FIRST_START::contains)) {
                return false;
            }
        }
        return state() != State.LEDGER && remains().isEmpty();
    }

    /** Deletes what a killed first start left; only after {@link #folderUnused} was true. */
    public void clearUnused() throws IOException {
        for (String name : OF_A_FIRST_START) {
            Files.deleteIfExists(root.resolve(name));
        }
    }

    /** A bag must stay as it was packed, and an archive that is opened is written to. */
    private void refuseBag() {
        bagAround(root).ifPresent(bag -> {
            throw new ArchiveProblem(Message.of("ledger.in-a-bag", "folder", root, "bag", bag));
        });
    }

    /** The bag that a folder is, or lies in at whatever depth; empty for any other folder. */
    public static Optional<Path> bagAround(Path folder) {
        Path place = folder.toAbsolutePath().normalize();
        return Stream.iterate(place, Objects::nonNull, Path::getParent)
                .filter(each -> Files.isRegularFile(each.resolve("bagit.txt")))
                .findFirst();
    }

    /** The archive that a folder lies in, not that which it is; empty where there is none. */
    public static Optional<Path> archiveAround(Path folder) {
        return Stream.iterate(folder.toAbsolutePath().normalize().getParent(), Objects::nonNull, Path::getParent)
                .filter(each -> in(each).begun())
                .findFirst();
    }

    private void refuseLoss(State state) {
        List<Message> remains = remains();
        if (!remains.isEmpty()) {
            throw new ArchiveProblem(Message.of(
                    "ledger.lost",
                    "folder",
                    root,
                    "state",
                    Message.of(state.key),
                    "remains",
                    new Joined(", ", remains)));
        }
    }

    /** Traces of a lost ledger, in words. */
    private List<Message> remains() {
        List<Message> remains = new ArrayList<>();
        if (hasFiles("photos")) {
            remains.add(Message.of("ledger.remains.photos"));
        }
        if (hasFiles("papers")) {
            remains.add(Message.of("ledger.remains.papers"));
        }
        if (hasFiles("previews")) {
            remains.add(Message.of("ledger.remains.previews"));
        }
        if (hasFiles("index")) {
            remains.add(Message.of("ledger.remains.index"));
        }
        if (size(root.resolve(LastWritten.NAME)) > 0) {
            remains.add(Message.of("ledger.remains.last-written"));
        }
        // SQLite writes a page into the file before it creates a log, and discards the log of an empty file.
        if (size(file) == 0 && size(beside("-wal")) > 0) {
            remains.add(Message.of("ledger.remains.log"));
        }
        if (!Files.exists(file) && size(beside("-journal")) > 0) {
            remains.add(Message.of("ledger.remains.journal"));
        }
        return remains;
    }

    private Path beside(String ending) {
        return root.resolve("ledger.db" + ending);
    }

    private boolean hasFiles(String folder) {
        Path path = root.resolve(folder);
        if (!Files.isDirectory(path)) {
            return false;
        }
        try (Stream<Path> files = Files.walk(path)) {
            return files.anyMatch(Files::isRegularFile);
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    private long size(Path path) {
        try {
            return Files.exists(path) ? Files.size(path) : 0;
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    private ArchiveProblem unreadable(IOException e) {
        return new ArchiveProblem(Message.of("ledger.folder-not-read", "folder", root, "why", Explained.of(e)), e);
    }

    private State state() {
        if (!Files.exists(file)) {
            return State.MISSING;
        }
        if (size(file) == 0) {
            return State.EMPTY;
        }
        // SQLite reads a file with a log only in a folder that it can write to.
        return size(beside("-journal")) > 0 || !Files.isWritable(root) ? ofCopy() : of(file, true);
    }

    /** An interrupted transaction must be rolled back before anything can be read; done on a copy. */
    private State ofCopy() {
        try (LedgerCopy copy = LedgerCopy.of(file)) {
            return of(copy.file(), false);
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    private State of(Path path, boolean readOnly) {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(readOnly);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + path.toAbsolutePath());
        try {
            List<String> tables = tables(source);
            if (tables.isEmpty()) {
                return State.NO_TABLES;
            }
            if (!tables.contains("flyway_schema_history")) {
                throw Database.refusal(file, Message.of("ledger.other-tables"), null);
            }
            if (SchemaHistory.isOurs(source)) {
                return State.LEDGER;
            }
            MigrationInfo[] steps = Database.flyway(source).info().applied();
            for (MigrationInfo step : steps) {
                if (Database.isOfTheFuture(step)) {
                    throw Database.refusal(
                            file,
                            Message.of(
                                    "ledger.newer-schema",
                                    "found",
                                    step.getVersion(),
                                    "known",
                                    Database.newestKnown(source)),
                            null);
                }
            }
            return steps.length == 0 && tables.size() == 1 ? State.NO_TABLES : State.LEDGER;
        } catch (SQLException | FlywayException e) {
            throw Database.refusal(file, Database.firstLine(e), e);
        }
    }

    private static List<String> tables(SQLiteDataSource source) throws SQLException {
        try (Connection connection = source.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT DISTINCT tbl_name FROM sqlite_schema WHERE tbl_name NOT LIKE 'sqlite\\_%' ESCAPE '\\'")) {
            List<String> tables = new ArrayList<>();
            while (row.next()) {
                tables.add(row.getString(1));
            }
            return tables;
        }
    }
}
