package tenterbook.ledger;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.revision.Canonical;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.measure.Digest;

/** Appends revisions of format 1 as the programs before schema 5 did, into a ledger of any schema. Not to be changed. */
final class FormatOne {
    private final Handle handle;

    FormatOne(Handle handle) {
        this.handle = handle;
    }

    <T> void save(Kind<T> kind, T record) {
        append(kind, record, "save");
    }

    <T> void append(Kind<T> kind, T record, String act) {
        RecordKey key = kind.key(kind.id().apply(record));
        long sequence = one("SELECT coalesce(max(sequence), 0) FROM revisions") + 1;
        int version = (int) one("SELECT count(*) FROM revisions WHERE kind = ? AND id = ?", key.kind(), key.id()) + 1;
        String previous = handle.createQuery("SELECT hash FROM revisions ORDER BY sequence DESC LIMIT 1")
                .mapTo(String.class)
                .findOne()
                .orElse("0".repeat(64));
        String text = Canonical.json(kind.codec().toJson(record));
        ObjectNode fields = JsonNodeFactory.instance.objectNode();
        fields.put("sequence", sequence);
        fields.put("kind", key.kind());
        fields.put("id", key.id());
        fields.put("version", version);
        fields.put("act", act);
        fields.put("record", text);
        fields.put("written_at", "2024-03-05T10:15:00.123Z");
        fields.put("author", "the old program");
        fields.put("note", "");
        fields.put("previous_hash", previous);
        String hash = Digest.of(Canonical.json(fields).getBytes(StandardCharsets.UTF_8))
                .hex();
        handle.execute(
                "INSERT INTO revisions (sequence, kind, id, version, act, record, written_at, author, note, previous_hash, hash) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                sequence,
                key.kind(),
                key.id(),
                version,
                act,
                text,
                "2024-03-05T10:15:00.123Z",
                "the old program",
                "",
                previous,
                hash);
        handle.execute(
                "INSERT INTO current (kind, id, sequence) VALUES (?, ?, ?) ON CONFLICT (kind, id) DO UPDATE SET sequence = excluded.sequence",
                key.kind(),
                key.id(),
                sequence);
        handle.execute("DELETE FROM reference WHERE from_kind = ? AND from_id = ?", key.kind(), key.id());
        kind.references()
                .apply(record)
                .forEach(to -> handle.execute(
                        "INSERT INTO reference VALUES (?, ?, ?, ?)", key.kind(), key.id(), to.kind(), to.id()));
    }

    private long one(String sql, Object... given) {
        return handle.select(sql, given).mapTo(Long.class).one();
    }
}
