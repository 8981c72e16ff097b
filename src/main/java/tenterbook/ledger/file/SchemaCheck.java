package tenterbook.ledger.file;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.sqlite.SQLiteDataSource;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Compares a ledger's schema with the one that this program creates: an added trigger would act at every later save, and
 * without a removed one revisions could be changed. The chain covers the contents of tables, not the schema.
 */
public final class SchemaCheck {
    private SchemaCheck() {}

    /** Computed at first use. */
    private static final class Expected {
        private static final Map<String, String> SCHEMA = migrated();
    }

    /** What an opened, and so migrated, ledger has added, missing or changed. */
    public static List<Finding> run(Handle handle) {
        Map<String, String> found;
        try {
            found = schema(handle.getConnection());
        } catch (SQLException e) {
            return List.of(finding(Message.of("ledger.check.schema-not-read", "why", Explained.of(e))));
        }
        List<Finding> findings = new ArrayList<>();
        Expected.SCHEMA.forEach((what, sql) -> {
            String other = found.remove(what);
            if (other == null) {
                findings.add(finding(Message.of("ledger.check.schema-lacks", "what", what)));
            } else if (!other.equals(sql)) {
                findings.add(finding(Message.of("ledger.check.schema-other", "what", what)));
            }
        });
        found.keySet().forEach(what -> findings.add(finding(foreign(what))));
        return findings;
    }

    /** Whether every table is there, so that the ledger can be read. */
    public static boolean hasAllTables(Handle handle) {
        try {
            Map<String, String> found = schema(handle.getConnection());
            return Expected.SCHEMA.keySet().stream()
                    .filter(what -> what.startsWith("table "))
                    .allMatch(found::containsKey);
        } catch (SQLException e) {
            return false;
        }
    }

    private static Message foreign(String what) {
        String[] words = what.split(" ", 2);
        return Message.of(
                "ledger.check.schema-foreign",
                "type",
                words[0],
                "what",
                what,
                "drop",
                "DROP %s \"%s\";"
                        .formatted(words[0].toUpperCase(java.util.Locale.ROOT), words[1].replace("\"", "\"\"")));
    }

    private static Finding finding(Message what) {
        return new Finding("ledger.db", what);
    }

    static Map<String, String> migrated() {
        SQLiteDataSource memory = new SQLiteDataSource();
        memory.setUrl("jdbc:sqlite::memory:");
        try (Connection connection = memory.getConnection()) {
            SchemaHistory.make(connection);
            return new TreeMap<>(schema(connection));
        } catch (SQLException e) {
            throw new IllegalStateException("The tables of a ledger could not be made in memory", e);
        }
    }

    static Map<String, String> schema(Connection connection) throws SQLException {
        Map<String, String> schema = new TreeMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("""
                        SELECT type || ' ' || name, coalesce(sql, '')
                        FROM sqlite_schema
                        WHERE tbl_name NOT LIKE 'sqlite\\_%' ESCAPE '\\'
                        AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'
                        AND NOT (tbl_name = 'flyway_schema_history' AND type IN ('table', 'index'))
                        """)) {
            while (row.next()) {
                schema.put(row.getString(1), row.getString(2));
            }
        }
        return schema;
    }
}
