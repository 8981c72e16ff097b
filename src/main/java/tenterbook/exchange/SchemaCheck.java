package tenterbook.exchange;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tenterbook.archive.Archive;
import tenterbook.ledger.Finding;

/**
 * A ledger from elsewhere must be built like one of ours: a trigger added would act at every later save, and one taken
 * out would no longer keep revisions from being changed. The chain covers what is in the tables, not how they are built.
 */
final class SchemaCheck {
    private SchemaCheck() {}

    /**
     * @param ledger closed, and already migrated by being opened once
     * @param blank a folder that is not there yet, for a new archive to compare with; the caller clears it
     */
    static List<Finding> run(Path ledger, Path blank, Clock clock) throws SQLException {
        Archive.open(blank, clock).close();
        Map<String, String> expected = schema(blank.resolve("ledger.db"));
        Map<String, String> found = schema(ledger);
        List<Finding> findings = new ArrayList<>();
        expected.forEach((what, sql) -> {
            String other = found.remove(what);
            if (other == null) {
                findings.add(finding("lacks the %s".formatted(what)));
            } else if (!other.equals(sql)) {
                findings.add(finding("has another %s than this program makes".formatted(what)));
            }
        });
        found.keySet().forEach(what -> findings.add(finding("has a %s that is not ours".formatted(what))));
        return findings;
    }

    private static Finding finding(String what) {
        return new Finding(
                "data/ledger.db",
                what
                        + ": somebody changed how the ledger is built. Use another bag; data/ledger.jsonl holds the records as text.");
    }

    private static Map<String, String> schema(Path ledger) throws SQLException {
        Map<String, String> schema = new TreeMap<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + ledger.toAbsolutePath());
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("""
                        SELECT type || ' ' || name, coalesce(sql, '')
                        FROM sqlite_schema
                        WHERE tbl_name NOT LIKE 'sqlite\\_%' ESCAPE '\\'
                        AND NOT (tbl_name = 'flyway_schema_history' AND type IN ('table', 'index'))
                        """)) {
            while (row.next()) {
                schema.put(row.getString(1), row.getString(2));
            }
        }
        return schema;
    }
}
