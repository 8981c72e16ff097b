package tenterbook.ledger;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import tenterbook.measure.Digest;

/**
 * The hash of a revision: SHA-256 over the UTF-8 bytes of the canonical JSON (RFC 8785) of its fields under the names of
 * the table's columns, with {@code record} as the text it is.
 */
final class Chain {
    private Chain() {}

    static Digest hash(Revision revision) {
        return Digest.of(Canonical.json(fields(revision)).getBytes(StandardCharsets.UTF_8));
    }

    /** The hashed fields and the hash itself; taking the hash out of the text again gives what was hashed. */
    static String line(Revision revision) {
        return Canonical.json(fields(revision).put("hash", revision.hash().hex()));
    }

    private static ObjectNode fields(Revision revision) {
        ObjectNode fields = JsonNodeFactory.instance.objectNode();
        fields.put("sequence", revision.sequence());
        fields.put("kind", revision.key().kind());
        fields.put("id", revision.key().id());
        fields.put("version", revision.version());
        fields.put("act", revision.withdrawn() ? "withdraw" : "save");
        fields.put("record", revision.json());
        fields.put("written_at", revision.writtenAt().toString());
        fields.put("author", revision.author());
        fields.put("note", revision.note());
        fields.put("previous_hash", revision.previous().hex());
        return fields;
    }
}
