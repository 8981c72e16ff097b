package tenterbook.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import org.jdbi.v3.core.statement.StatementContext;
import tenterbook.ledger.revision.RecordKey;

/** The newest revision of a record without the columns of the chain, as most queries need it. */
record Newest(
        long sequence, RecordKey key, int version, boolean withdrawn, String json, Instant writtenAt, String author) {
    /** Every row of ‘current’, as c, with its revision, as r. */
    static final String EVERY = """
            SELECT c.sequence, c.kind, c.id, r.version, r.act, coalesce(t.record, r.record), r.written_at,
                coalesce(p.author, r.author)
            FROM current AS c
            JOIN revisions AS r ON r.sequence = c.sequence
            LEFT JOIN private_parts AS p ON p.sequence = c.sequence
            LEFT JOIN current_texts AS t ON t.sequence = c.sequence
            """;

    static Newest read(ResultSet row, StatementContext context) throws SQLException {
        return new Newest(
                row.getLong(1),
                new RecordKey(row.getString(2), row.getString(3)),
                row.getInt(4),
                row.getString(5).equals("withdraw"),
                row.getString(6),
                Instant.parse(row.getString(7)),
                row.getString(8));
    }
}
