package tenterbook.ledger;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.TextNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.file.LaterNames;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.RevisionForm;
import tenterbook.measure.Digest;

/** The ledger's SQL. */
final class LedgerSql {
    private LedgerSql() {}

    static Optional<Newest> newest(Handle handle, RecordKey key) {
        return handle.createQuery(Newest.EVERY + """
                                WHERE c.kind = :kind AND c.id = :id
                                """)
                .bind("kind", key.kind())
                .bind("id", key.id())
                .map(Newest::read)
                .findOne();
    }

    /** The key by the first identifier of a record, where a later one may be given. */
    static RecordKey first(Handle handle, RecordKey key) {
        return newest(handle, key).isPresent()
                ? key
                : LaterNames.first(handle, key.kind(), key.id())
                        .map(id -> new RecordKey(key.kind(), id))
                        .orElse(key);
    }

    /** As {@link #newest}, also by an identifier that the record was given later. */
    static Optional<Newest> named(Handle handle, RecordKey key) {
        return newest(handle, key)
                .or(() -> LaterNames.first(handle, key.kind(), key.id())
                        .flatMap(first -> newest(handle, new RecordKey(key.kind(), first))));
    }

    /** The texts of records in use, by identifier. */
    static Map<String, String> records(Handle handle, String kind, Collection<String> ids) {
        Map<String, String> records = new LinkedHashMap<>();
        // A cross join keeps the order of the tables, so that each identifier is looked up; SQLite might otherwise read
        // the
        // whole kind. json_each reads the list from one binding.
        handle.createQuery("""
                        SELECT c.id, coalesce(t.record, r.record)
                        FROM json_each(:ids) AS wanted
                        CROSS JOIN current AS c ON c.kind = :kind AND c.id = wanted.value
                        JOIN revisions AS r ON r.sequence = c.sequence
                        LEFT JOIN current_texts AS t ON t.sequence = c.sequence
                        WHERE r.act = 'save'
                        """)
                .bind("ids", list(ids))
                .bind("kind", kind)
                .map((row, context) -> Map.entry(row.getString(1), row.getString(2)))
                .forEach(row -> records.put(row.getKey(), row.getValue()));
        return records;
    }

    /**
     * The identifiers of records of kind {@code by} that refer to each of those of kind {@code of}; those without any are left
     * out.
     */
    static Map<String, List<String>> referencedBy(Handle handle, String by, String of, Collection<String> ids) {
        Map<String, List<String>> users = new LinkedHashMap<>();
        handle.createQuery("""
                        SELECT r.to_id, r.from_id
                        FROM json_each(:ids) AS wanted
                        CROSS JOIN reference AS r ON r.to_kind = :of AND r.to_id = wanted.value
                        WHERE r.from_kind = :by
                        ORDER BY r.from_id
                        """)
                .bind("ids", list(ids))
                .bind("of", of)
                .bind("by", by)
                .map((row, context) -> Map.entry(row.getString(1), row.getString(2)))
                .forEach(row -> users.computeIfAbsent(row.getKey(), id -> new ArrayList<>())
                        .add(row.getValue()));
        return users;
    }

    private static String list(Collection<String> ids) {
        return JsonNodeFactory.instance
                .arrayNode()
                .addAll(ids.stream().map(TextNode::new).toList())
                .toString();
    }

    static Map<String, Instant> recorded(Handle handle, String kind, Collection<String> ids) {
        Map<String, Instant> recorded = new LinkedHashMap<>();
        handle.createQuery("""
                        SELECT wanted.value, r.written_at
                        FROM json_each(:ids) AS wanted
                        CROSS JOIN revisions AS r ON r.kind = :kind AND r.version = 1
                            AND r.id IN (wanted.value, (SELECT handle FROM handles WHERE kind = :kind AND id = wanted.value))
                        """)
                .bind("ids", list(ids))
                .bind("kind", kind)
                .map((row, context) -> Map.entry(row.getString(1), Instant.parse(row.getString(2))))
                .forEach(row -> recorded.put(row.getKey(), row.getValue()));
        return recorded;
    }

    static List<Newest> newestOfKind(Handle handle, String kind) {
        return handle.createQuery(Newest.EVERY + """
                                WHERE c.kind = :kind AND r.act = 'save'
                                ORDER BY c.id
                                """)
                .bind("kind", kind)
                .map(Newest::read)
                .list();
    }

    static List<Newest> unreferenced(Handle handle, String kind, String by) {
        return handle.createQuery(Newest.EVERY + """
                                WHERE c.kind = :kind
                                AND NOT EXISTS (
                                    SELECT 1 FROM reference AS n
                                    WHERE n.to_kind = c.kind AND n.to_id = c.id AND n.from_kind = :by)
                                AND r.act = 'save'
                                ORDER BY c.id
                                """)
                .bind("kind", kind)
                .bind("by", by)
                .map(Newest::read)
                .list();
    }

    static List<Newest> latestOfKind(Handle handle, String kind, int limit) {
        return handle.createQuery(Newest.EVERY + """
                                WHERE c.kind = :kind AND r.act = 'save'
                                ORDER BY c.sequence DESC
                                LIMIT :limit
                                """)
                .bind("kind", kind)
                .bind("limit", limit)
                .map(Newest::read)
                .list();
    }

    static int count(Handle handle, String kind) {
        return handle.createQuery("""
                        SELECT (SELECT count(*) FROM current WHERE kind = :kind)
                             - (SELECT count(*)
                                FROM revisions AS r
                                JOIN current AS c ON c.sequence = r.sequence
                                WHERE r.kind = :kind AND r.act = 'withdraw')
                        """).bind("kind", kind).mapTo(Integer.class).one();
    }

    static List<String> identifiers(Handle handle, String kind) {
        return handle.createQuery("SELECT id FROM current WHERE kind = :kind ORDER BY id")
                .bind("kind", kind)
                .mapTo(String.class)
                .list();
    }

    /** Those that begin with {@code start}, whatever the case of its letters, and perhaps some more. */
    static List<String> identifiers(Handle handle, String kind, String start) {
        // LIKE knows the two cases of a to z only, so any other letter stands for every one.
        String like = start.replaceAll("[^\\p{ASCII}]|[%_]", "_") + "%";
        return handle.createQuery(
                        "SELECT id FROM current WHERE kind = :kind AND id LIKE :like UNION " + LaterNames.BEGINNING)
                .bind("kind", kind)
                .bind("like", like)
                .mapTo(String.class)
                .list();
    }

    /** The member is written into the query: an index is used only where the query has its very words. */
    static Map<String, String> texts(Handle handle, String kind, String member) {
        if (!member.matches("[A-Za-z]+")) {
            throw new IllegalArgumentException(member);
        }
        Map<String, String> texts = new LinkedHashMap<>();
        handle.createQuery("""
                        SELECT r.id, r.record ->> '$.%1$s'
                        FROM revisions AS r
                        JOIN current AS c ON c.kind = r.kind AND c.id = r.id AND c.sequence = r.sequence
                        WHERE r.record ->> '$.%1$s' IS NOT NULL AND r.kind = :kind AND r.act = 'save'
                        ORDER BY +r.id
                        """.formatted(member))
                .bind("kind", kind)
                .map((row, context) -> Map.entry(row.getString(1), row.getString(2)))
                .forEach(row -> texts.put(row.getKey(), row.getValue()));
        return texts;
    }

    static boolean anyAfter(Handle handle, String kind, long sequence) {
        return handle.createQuery("SELECT EXISTS (SELECT 1 FROM revisions WHERE kind = :kind AND sequence > :sequence)")
                .bind("kind", kind)
                .bind("sequence", sequence)
                .mapTo(Boolean.class)
                .one();
    }

    static List<Revision> history(Handle handle, RecordKey key) {
        return handle.createQuery(RevisionRow.EVERY
                        + " WHERE r.kind = :kind"
                        + " AND r.id IN (:id, (SELECT handle FROM handles WHERE kind = :kind AND id = :id))"
                        + " ORDER BY r.version")
                .bind("kind", key.kind())
                .bind("id", key.id())
                .map(RevisionRow::read)
                .list();
    }

    static List<Revision> after(Handle handle, long sequence, int limit) {
        return handle.createQuery(RevisionRow.EVERY + " WHERE r.sequence > :sequence ORDER BY r.sequence LIMIT :limit")
                .bind("sequence", sequence)
                .bind("limit", limit)
                .map(RevisionRow::read)
                .list();
    }

    static List<Long> sequencesAfter(Handle handle, long sequence, int limit) {
        return handle.createQuery(
                        "SELECT sequence FROM revisions WHERE sequence > :sequence ORDER BY sequence LIMIT :limit")
                .bind("sequence", sequence)
                .bind("limit", limit)
                .mapTo(Long.class)
                .list();
    }

    /** The last revision's place in the chain; in an empty ledger its format is 0. */
    record End(long sequence, Digest hash, int format) {}

    static End end(Handle handle) {
        return handle.createQuery("SELECT sequence, hash, format FROM revisions ORDER BY sequence DESC LIMIT 1")
                .map((row, context) -> new End(row.getLong(1), new Digest(row.getString(2)), row.getInt(3)))
                .findOne()
                .orElse(new End(0, Revision.NONE, 0));
    }

    /** The hash of one revision; empty where there is none of that sequence. */
    static Optional<Digest> hash(Handle handle, long sequence) {
        return handle.createQuery("SELECT hash FROM revisions WHERE sequence = :sequence")
                .bind("sequence", sequence)
                .mapTo(String.class)
                .findOne()
                .map(Digest::new);
    }

    static long lastSequence(Handle handle) {
        return handle.createQuery("SELECT coalesce(max(sequence), 0) FROM revisions")
                .mapTo(Long.class)
                .one();
    }

    static void insert(Handle handle, Revision revision, RevisionForm.Parted parted) {
        RevisionRow.insert(handle, revision, parted);
        RevisionRow.makeCurrent(handle, revision, parted);
    }

    static void clearReferences(Handle handle, RecordKey from) {
        handle.createUpdate("DELETE FROM reference WHERE from_kind = :kind AND from_id = :id")
                .bind("kind", from.kind())
                .bind("id", from.id())
                .execute();
    }

    static void addReference(Handle handle, RecordKey from, RecordKey to) {
        handle.createUpdate("""
                        INSERT INTO reference (from_kind, from_id, to_kind, to_id)
                        VALUES (:fromKind, :fromId, :toKind, :toId)
                        """)
                .bind("fromKind", from.kind())
                .bind("fromId", from.id())
                .bind("toKind", to.kind())
                .bind("toId", to.id())
                .execute();
    }

    static List<RecordKey> referencedBy(Handle handle, RecordKey key) {
        return handle.createQuery("""
                        SELECT from_kind, from_id
                        FROM reference
                        WHERE to_kind = :kind AND to_id = :id
                        ORDER BY from_kind, from_id
                        """)
                .bind("kind", key.kind())
                .bind("id", key.id())
                .map((row, context) -> new RecordKey(row.getString(1), row.getString(2)))
                .list();
    }

    static List<RecordKey> references(Handle handle, RecordKey key) {
        return handle.createQuery("""
                        SELECT to_kind, to_id
                        FROM reference
                        WHERE from_kind = :kind AND from_id = :id
                        ORDER BY to_kind, to_id
                        """)
                .bind("kind", key.kind())
                .bind("id", key.id())
                .map((row, context) -> new RecordKey(row.getString(1), row.getString(2)))
                .list();
    }
}
