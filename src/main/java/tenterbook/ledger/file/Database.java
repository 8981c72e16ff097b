package tenterbook.ledger.file;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import tenterbook.words.Message;

/**
 * The SQLite file: one connection that writes, a few that read.
 *
 * <p>Write-ahead log, so that readers never wait for the writer; {@code synchronous=FULL}, since what is acknowledged must be
 * on the only disk; foreign keys on for every connection.
 */
public final class Database implements AutoCloseable {
    /** One for all readers, so that what it learns of a statement serves each of them. */
    private final Jdbi readers;

    private final ConcurrentLinkedDeque<Handle> idleReaders = new ConcurrentLinkedDeque<>();
    private final List<Handle> everyReader = new ArrayList<>();
    private final ReentrantLock writing = new ReentrantLock(true);
    private final SQLiteDataSource writeSource;
    /** Used and replaced only under {@link #writing}. */
    private Handle writer;

    /** How long a write waits for another program; writers of this one wait for each other without a limit. */
    private static final int BUSY_MILLIS = 5_000;

    private volatile boolean closed;

    /** @param file checked before with {@link LedgerFile}, so that a refused one keeps every byte */
    public Database(Path file) {
        this.writeSource = source(file, false);
        migrate(writeSource, file);
        this.readers = Jdbi.create(source(file, true));
        this.writer = Jdbi.open(writeSource);
    }

    private static SQLiteDataSource source(Path file, boolean readOnly) {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        config.setBusyTimeout(BUSY_MILLIS);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        if (readOnly) {
            config.setTransactionMode(SQLiteConfig.TransactionMode.DEFERRED);
        }
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        return source;
    }

    static boolean isOfTheFuture(MigrationInfo step) {
        return step.getState() == MigrationState.FUTURE_SUCCESS || step.getState() == MigrationState.FUTURE_FAILED;
    }

    static String newestKnown(DataSource source) {
        return Stream.of(flyway(source).info().all())
                .filter(step -> !isOfTheFuture(step))
                .map(step -> step.getVersion().toString())
                .reduce("none", (before, later) -> later);
    }

    static Flyway flyway(DataSource source) {
        return Flyway.configure()
                .dataSource(source)
                .locations("classpath:db/migration")
                .loggers("slf4j")
                .load();
    }

    private static void migrate(DataSource source, Path file) {
        try {
            if (!SchemaHistory.isOurs(source)) {
                flyway(source).migrate();
            }
        } catch (FlywayException e) {
            throw refusal(file, firstLine(e), e);
        }
    }

    static ArchiveProblem refusal(Path file, Object why, @Nullable Exception cause) {
        return new ArchiveProblem(Message.of("ledger.not-opened", "file", file.toAbsolutePath(), "why", why), cause);
    }

    static String firstLine(Exception e) {
        return String.valueOf(e.getMessage())
                .strip()
                .lines()
                .findFirst()
                .orElse(Message.of("ledger.no-reason").inEnglish());
    }

    public <R extends @Nullable Object> R read(Function<Handle, R> work) {
        Handle handle = idleReaders.pollFirst();
        if (handle == null) {
            handle = readers.open();
            handle.execute("PRAGMA query_only = 1");
            synchronized (everyReader) {
                everyReader.add(handle);
            }
        }
        try {
            return work.apply(handle);
        } finally {
            if (closed) {
                handle.close();
            } else {
                idleReaders.addFirst(handle);
            }
        }
    }

    /**
     * Runs {@code work} in one transaction; an exception rolls it back. Waits for other writers.
     *
     * @throws ArchiveProblem where the disk is full or fails; nothing is written
     */
    public <R extends @Nullable Object> R write(Function<Handle, R> work) {
        writing.lock();
        try {
            return sound().inTransaction(work::apply);
        } catch (JdbiException e) {
            throw DiskTrouble.explained(e, Message.of("ledger.disk.nothing-saved"), Message.of("ledger.disk.archive"));
        } finally {
            writing.unlock();
        }
    }

    /**
     * The writer, outside any transaction. Where a full disk or a lock ends a transaction, or prevents its beginning, the
     * driver still assumes that it is in one, and later writes would not be atomic. Such a connection is replaced.
     */
    private Handle sound() {
        if (writing.getHoldCount() == 1 && writer.isInTransaction()) {
            Handle fresh = Jdbi.open(writeSource);
            letGo(writer);
            writer = fresh;
        }
        return writer;
    }

    private static void letGo(Handle handle) {
        try {
            handle.getConnection().close();
        } catch (SQLException e) {
            LoggerFactory.getLogger(Database.class).info("A connection to the ledger was not closed tidily", e);
        }
    }

    /** Copies the whole database into a new file. */
    public void copyTo(Path target) {
        writing.lock();
        try {
            sound().execute("VACUUM INTO ?", target.toAbsolutePath().toString());
        } catch (JdbiException e) {
            throw DiskTrouble.explained(e, Message.of("ledger.disk.not-copied"), Message.of("ledger.disk.target"));
        } finally {
            writing.unlock();
        }
    }

    /**
     * Marks the file, within the transaction that erases, so that the next start does what follows if the program ends before
     * {@link #forgotten}. The mark is SQLite's {@code user_version}, which nothing else here uses.
     */
    public static void mustForget(Handle handle) {
        handle.execute("PRAGMA user_version = 1");
    }

    public boolean mustForget() {
        return read(handle -> handle.createQuery("PRAGMA user_version")
                        .mapTo(Integer.class)
                        .one())
                == 1;
    }

    /** Removes the mark. */
    public void forgotten() {
        writing.lock();
        try {
            sound().execute("PRAGMA user_version = 0");
        } finally {
            writing.unlock();
        }
    }

    /**
     * Rewrites the file and empties the write-ahead log, so that what was deleted is in neither. Blocks that the disk itself
     * keeps are out of reach.
     *
     * @throws ArchiveProblem where the disk is full or fails, or a reader would not end; what was deleted may then still be in
     *     the files until a later start
     */
    public void forget() {
        writing.lock();
        try {
            sound().execute("VACUUM");
            int busy = sound().createQuery("PRAGMA wal_checkpoint(TRUNCATE)")
                    .mapTo(Integer.class)
                    .one();
            if (busy != 0) {
                throw new ArchiveProblem(Message.of("ledger.wal-held"));
            }
        } catch (JdbiException e) {
            throw DiskTrouble.explained(e, Message.of("ledger.disk.not-forgotten"), Message.of("ledger.disk.archive"));
        } finally {
            writing.unlock();
        }
    }

    @Override
    public void close() {
        writing.lock();
        try {
            closed = true;
            synchronized (everyReader) {
                everyReader.forEach(Handle::close);
            }
            checkpoint();
            letGo(writer);
        } finally {
            writing.unlock();
        }
    }

    private void checkpoint() {
        Connection connection = writer.getConnection();
        try (var statement = connection.createStatement()) {
            statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
        } catch (SQLException e) {
            // The write-ahead log stays beside the file and is read at the next start; nothing is lost.
            LoggerFactory.getLogger(Database.class).info("Left the write-ahead log for the next start", e);
        }
    }
}
