package tenterbook.ledger.revision;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;

/**
 * The private part of a revision.
 *
 * @param salt of the digest, in hex; empty where {@code redacted}
 * @param id the identifier, where it names a person; else null
 * @param fields the record's private fields by pointer, canonical JSON
 * @param redacted whether an erasure removed values, so that it no longer matches its digest
 */
public record PrivatePart(
        String salt, String author, String note, @Nullable String id, String fields, boolean redacted) {
    /** What the private digest covers, as canonical JSON. */
    String text() {
        ObjectNode text = JsonNodeFactory.instance.objectNode();
        text.put("salt", salt);
        text.put("author", author);
        text.put("note", note);
        if (id != null) {
            text.put("id", id);
        }
        text.put("fields", fields);
        return Canonical.json(text);
    }

    /** The same with another salt, for the digest of what an erasure left. */
    public PrivatePart salted(String other) {
        return new PrivatePart(other, author, note, id, fields, redacted);
    }

    public Digest digest() {
        return Chain.digest(text());
    }
}
