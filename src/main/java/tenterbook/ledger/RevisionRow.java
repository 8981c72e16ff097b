package tenterbook.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Map;
import java.util.Objects;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import tenterbook.ledger.revision.Chain;
import tenterbook.ledger.revision.PrivatePart;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.RevisionForm;
import tenterbook.ledger.revision.RevisionForm.Parted;
import tenterbook.ledger.revision.RevisionForm.Whole;
import tenterbook.ledger.revision.TwoParts;
import tenterbook.measure.Digest;

/** Reads revisions from the tables and writes them. */
final class RevisionRow {
    private static final String COLUMNS = """
            r.sequence, r.kind, coalesce(p.id, r.id), r.version, r.act, r.record, r.written_at, coalesce(p.author, r.author),
            coalesce(p.note, r.note), r.previous_hash, r.hash, r.format, r.redacted, r.id, r.public_salt, r.public_digest,
            r.private_digest, r.before_digest, p.salt, p.id, p.fields, p.redacted, t.record
            """;

    private static final String PARTS = """
            LEFT JOIN private_parts AS p ON p.sequence = r.sequence
            LEFT JOIN current_texts AS t ON t.sequence = r.sequence
            """;
    /** Every revision, as r. */
    static final String EVERY = "SELECT " + COLUMNS + "FROM revisions AS r\n" + PARTS;

    private RevisionRow() {}

    /** @throws IllegalArgumentException where the row is not a valid revision */
    static Revision read(ResultSet row, StatementContext context) throws SQLException {
        RevisionForm form = row.getInt(12) == 1 ? new Whole(row.getInt(13) == 1) : parted(row);
        return new Revision(
                row.getLong(1),
                new RecordKey(row.getString(2), row.getString(3)),
                row.getInt(4),
                row.getString(5).equals("withdraw"),
                json(row, form),
                Instant.parse(row.getString(7)),
                row.getString(8),
                row.getString(9),
                new Digest(row.getString(10)),
                new Digest(row.getString(11)),
                form);
    }

    private static Parted parted(ResultSet row) throws SQLException {
        String salt = row.getString(19);
        PrivatePart kept = salt == null
                ? null
                : new PrivatePart(
                        salt,
                        row.getString(8),
                        row.getString(9),
                        row.getString(20),
                        row.getString(21),
                        row.getInt(22) == 1);
        String before = row.getString(18);
        return new Parted(
                row.getString(14),
                row.getString(15),
                row.getString(6),
                new Digest(row.getString(16)),
                new Digest(row.getString(17)),
                before == null ? null : new Digest(before),
                kept);
    }

    private static String json(ResultSet row, RevisionForm form) throws SQLException {
        String whole = row.getString(23);
        if (whole != null) {
            return whole;
        }
        try {
            return form instanceof Parted parted && parted.kept() != null
                    ? new TwoParts(parted.shown(), parted.fields()).merged()
                    : row.getString(6);
        } catch (IllegalArgumentException e) {
            // Damaged: reading the record fails on this text, while other revisions stay readable.
            return row.getString(6);
        }
    }

    static void insert(Handle handle, Revision revision, Parted parted) {
        handle.createUpdate("""
                        INSERT INTO revisions
                            (sequence, kind, id, version, act, record, written_at, author, note, previous_hash, hash, format,
                            public_salt, public_digest, private_digest, before_digest)
                        VALUES
                            (:sequence, :kind, :id, :version, :act, :record, :writtenAt, '', '', :previous, :hash, 2,
                            :salt, :publicDigest, :privateDigest, :before)
                        """)
                .bind("sequence", revision.sequence())
                .bind("kind", revision.key().kind())
                .bind("id", parted.id())
                .bind("version", revision.version())
                .bind("act", Chain.act(revision))
                .bind("record", parted.shown())
                .bind("writtenAt", revision.writtenAt().toString())
                .bind("previous", revision.previous().hex())
                .bind("hash", revision.hash().hex())
                .bind("salt", parted.salt())
                .bind("publicDigest", parted.publicDigest().hex())
                .bind("privateDigest", parted.privateDigest().hex())
                .bind("before", parted.before() == null ? null : parted.before().hex())
                .execute();
        PrivatePart kept = Objects.requireNonNull(parted.kept());
        handle.createUpdate("""
                        INSERT INTO private_parts (sequence, salt, author, note, id, fields)
                        VALUES (:sequence, :salt, :author, :note, :id, :fields)
                        """)
                .bind("sequence", revision.sequence())
                .bind("salt", kept.salt())
                .bind("author", kept.author())
                .bind("note", kept.note())
                .bind("id", kept.id())
                .bind("fields", kept.fields())
                .execute();
    }

    /** Makes the revision the newest of its record. */
    static void makeCurrent(Handle handle, Revision revision, Parted parted) {
        boolean kept = !parted.fields().equals(TwoParts.NO_FIELDS);
        boolean there = handle.createUpdate((kept
                                        ? "UPDATE current_texts SET sequence = :sequence, record = :record"
                                        : "DELETE FROM current_texts")
                                + " WHERE sequence = (SELECT sequence FROM current WHERE kind = :kind AND id = :id)")
                        .bind("kind", revision.key().kind())
                        .bind("id", revision.key().id())
                        .bindMap(kept ? Map.of("sequence", revision.sequence(), "record", revision.json()) : Map.of())
                        .execute()
                > 0;
        handle.createUpdate("""
                        INSERT INTO current (kind, id, sequence)
                        VALUES (:kind, :id, :sequence)
                        ON CONFLICT (kind, id) DO UPDATE SET sequence = excluded.sequence
                        """)
                .bind("kind", revision.key().kind())
                .bind("id", revision.key().id())
                .bind("sequence", revision.sequence())
                .execute();
        if (kept && !there) {
            handle.createUpdate("INSERT INTO current_texts (sequence, record) VALUES (:sequence, :record)")
                    .bind("sequence", revision.sequence())
                    .bind("record", revision.json())
                    .execute();
        }
    }
}
