package tenterbook.labelling.issue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import tenterbook.labelling.issue.HangTagStatus.Standing;
import tenterbook.labelling.issue.HangTagStatus.State;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.words.Message;

/**
 * The SQLite file of {@link TagTable}: a row for each piece and market. The sequence that it is valid for is written after the
 * rows, so that rows written by a killed process are only computed again. {@code synchronous=NORMAL}: after a power cut the
 * file is consistent, and missing rows are computed again too.
 */
final class TagRows implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(TagRows.class);

    /**
     * {@code state} is empty where the piece is withdrawn or cannot be read; {@code reasons} are a line each; {@code changed} is
     * where the ledger ended when the state was first seen to be this one.
     */
    private static final String EMPTY = """
            DELETE FROM good_for;
            DROP TABLE IF EXISTS tag;
            CREATE TABLE tag (
                piece TEXT NOT NULL, market TEXT NOT NULL, state TEXT NOT NULL,
                reasons TEXT NOT NULL, changed INTEGER NOT NULL,
                PRIMARY KEY (piece, market)) WITHOUT ROWID;
            CREATE INDEX tag_changed ON tag (changed);
            """;

    private final Path file;
    private final String version;
    private final Object writing = new Object();
    private final Object reading = new Object();
    private Handle writer;
    private Handle reader;
    private volatile long sequence;
    private volatile String hash = "";

    /**
     * @param version of the contents; a file of another version is rebuilt
     * @throws ArchiveProblem if the folder cannot be written
     */
    TagRows(Path file, String version) {
        this.file = file;
        this.version = version;
        try {
            Files.createDirectories(file.getParent());
            open();
        } catch (JdbiException e) {
            LOG.warn("The table {} cannot be read and is made anew from the ledger", file, e);
            startAnew();
        } catch (IOException e) {
            throw problem(e);
        }
    }

    private ArchiveProblem problem(Exception e) {
        return new ArchiveProblem(
                Message.of("label.standing.table-not-written", "file", file, "why", String.valueOf(e.getMessage()))
                        .inEnglish(),
                e);
    }

    private void open() {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.NORMAL);
        config.setBusyTimeout(10_000);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        writer = Jdbi.open(source);
        reader = Jdbi.open(source);
        writer.execute("CREATE TABLE IF NOT EXISTS good_for (name TEXT PRIMARY KEY, value TEXT NOT NULL)");
        if (!version.equals(kept("version"))) {
            writer.createScript(EMPTY).execute();
            keep("version", version);
        }
        String[] seen = kept("seen").split(" ");
        hash = seen.length == 2 ? seen[1] : "";
        sequence = seen.length == 2 ? Long.parseLong(seen[0]) : 0;
    }

    private String kept(String name) {
        return writer.createQuery("SELECT value FROM good_for WHERE name = ?")
                .bind(0, name)
                .mapTo(String.class)
                .findOne()
                .orElse("");
    }

    private void keep(String name, String value) {
        writer.execute("INSERT OR REPLACE INTO good_for (name, value) VALUES (?, ?)", name, value);
    }

    /** The last revision of the ledger that all rows include; 0 for none. */
    long sequence() {
        return sequence;
    }

    /** The hash of that revision. */
    String hash() {
        return hash;
    }

    /** Deletes everything. */
    void startAnew() {
        synchronized (writing) {
            synchronized (reading) {
                sequence = 0;
                close();
                try {
                    for (String end : List.of("", "-wal", "-shm", "-journal")) {
                        Files.deleteIfExists(file.resolveSibling(file.getFileName() + end));
                    }
                    Files.createDirectories(file.getParent());
                } catch (IOException e) {
                    throw problem(e);
                }
                open();
            }
        }
    }

    void seen(long last, String hashOfLast) {
        synchronized (writing) {
            keep("seen", last + " " + hashOfLast);
            hash = hashOfLast;
            sequence = last;
        }
    }

    /**
     * Stores the status of these pieces; those not among {@code found} have none.
     *
     * @param stamp a sequence at or after all that was read of the ledger
     */
    void keep(List<String> numbers, Map<String, List<Standing>> found, long stamp) {
        synchronized (writing) {
            writer.useTransaction(handle -> {
                try (PreparedBatch batch = handle.prepareBatch("""
                        INSERT INTO tag (piece, market, state, reasons, changed) VALUES (?, ?, ?, ?, ?)
                        ON CONFLICT (piece, market) DO UPDATE
                        SET changed = iif(state = excluded.state, changed, excluded.changed),
                            state = excluded.state,
                            reasons = excluded.reasons
                        WHERE state <> excluded.state OR reasons <> excluded.reasons
                        """)) {
                    found.forEach((number, standings) -> standings.forEach(standing -> batch.add(
                            number,
                            standing.market().name(),
                            standing.state().name(),
                            String.join("\n", standing.reasons()),
                            stamp)));
                    batch.execute();
                }
                for (String number : numbers) {
                    if (!found.containsKey(number)) {
                        handle.execute(
                                "UPDATE tag SET state = '', reasons = '', changed = ? WHERE piece = ? AND state <> ''",
                                stamp,
                                number);
                    }
                }
            });
        }
    }

    List<String> changedAfter(long sequenceBefore) {
        synchronized (reading) {
            // Distinct here, since for DISTINCT SQLite would read the whole table in its order instead of the index.
            return reader
                    .createQuery("SELECT piece FROM tag WHERE changed > ?")
                    .bind(0, sequenceBefore)
                    .mapTo(String.class)
                    .stream()
                    .distinct()
                    .toList();
        }
    }

    Map<String, List<Standing>> of(Collection<String> numbers) {
        return standings(
                "FROM json_each(?) AS wanted CROSS JOIN tag AS t ON t.piece = wanted.value",
                JsonNodeFactory.instance
                        .arrayNode()
                        .addAll(numbers.stream().map(TextNode::new).toList())
                        .toString());
    }

    Map<String, List<Standing>> all() {
        return standings("FROM tag AS t");
    }

    private Map<String, List<Standing>> standings(String from, Object... bound) {
        Map<String, List<Standing>> found = new LinkedHashMap<>();
        synchronized (reading) {
            reader.select("SELECT t.piece, t.market, t.state, t.reasons " + from + " WHERE t.state <> ''", bound)
                    .map((row, context) -> Map.entry(row.getString(1), standing(row)))
                    .forEach(row -> found.computeIfAbsent(row.getKey(), number -> new ArrayList<>())
                            .add(row.getValue()));
        }
        found.values().forEach(standings -> standings.sort(Comparator.comparing(Standing::market)));
        return found;
    }

    private static Standing standing(ResultSet row) throws SQLException {
        return new Standing(
                Market.valueOf(row.getString(2)),
                State.valueOf(row.getString(3)),
                row.getString(4).lines().toList());
    }

    private static void closeQuietly(Handle handle) {
        try {
            if (handle != null) {
                handle.close();
            }
        } catch (RuntimeException e) {
            LOG.info("A connection to the table of tags was not closed tidily", e);
        }
    }

    @Override
    public void close() {
        synchronized (writing) {
            synchronized (reading) {
                closeQuietly(reader);
                closeQuietly(writer);
                reader = null;
                writer = null;
            }
        }
    }
}
