package tenterbook.imaging;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * A file of rows that can be made again at any time, and may be deleted. One that is missing or damaged is made anew, and rows of
 * another version are dropped. Not for several threads: whoever keeps it has a lock.
 */
public final class DerivedTable implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(DerivedTable.class);

    /** Null where nothing may be written: then it is kept in memory. */
    private final @Nullable Path file;

    private final int version;
    private final String table;
    private final List<String> create;
    private @Nullable Handle open;

    /**
     * @param file null for one in memory
     * @param version of what the rows depend on besides the photographs
     * @param table whose rows are dropped where they are of another version
     * @param create statements that make what is missing
     */
    public DerivedTable(@Nullable Path file, int version, String table, List<String> create) {
        this.file = file;
        this.version = version;
        this.table = table;
        this.create = List.copyOf(create);
    }

    /** Opens it where it is not open. */
    public Handle handle() {
        if (open == null) {
            try {
                open = opened();
            } catch (JdbiException e) {
                LOG.warn("The table {} cannot be read and is made anew", file, e);
                delete();
                open = opened();
            }
        }
        return open;
    }

    private Handle opened() {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.NORMAL);
        config.setBusyTimeout(10_000);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + (file == null ? ":memory:" : file.toAbsolutePath()));
        if (file != null) {
            try {
                Files.createDirectories(file.getParent());
            } catch (IOException e) {
                LOG.warn("The folder {} cannot be made", file.getParent(), e);
            }
        }
        Handle handle = Jdbi.open(source);
        try {
            int kept = handle.createQuery("PRAGMA user_version")
                    .mapTo(Integer.class)
                    .one();
            if (kept != version) {
                handle.execute("DROP TABLE IF EXISTS " + table);
            }
            create.forEach(handle::execute);
            handle.execute("PRAGMA user_version = " + version);
            return handle;
        } catch (JdbiException e) {
            handle.close();
            throw e;
        }
    }

    /** Closes it and deletes the file: the next use makes it anew. */
    public void startAnew() {
        close();
        delete();
    }

    private void delete() {
        if (file == null) {
            return;
        }
        try {
            for (String end : List.of("", "-wal", "-shm")) {
                Files.deleteIfExists(file.resolveSibling(file.getFileName() + end));
            }
        } catch (IOException e) {
            LOG.warn("The table {} cannot be deleted", file, e);
        }
    }

    @Override
    public void close() {
        if (open != null) {
            open.close();
            open = null;
        }
    }
}
