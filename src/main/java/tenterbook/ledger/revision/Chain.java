package tenterbook.ledger.revision;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import tenterbook.ledger.revision.RevisionForm.Parted;
import tenterbook.measure.Digest;

/**
 * The hash of a revision: SHA-256 over the UTF-8 bytes of canonical JSON (RFC 8785).
 *
 * <p>Format 1: its fields under the names of the table's columns, with {@code record} as text.
 *
 * <p>Format 2: {@code format, sequence, kind, version, act, written_at, public_digest, private_digest, previous_hash} and, in
 * the first after revisions of format 1, {@code before}. The public digest is the SHA-256 of {@code salt, id, record}, the
 * private one of {@code salt, author, note, fields} and, where it names a person, {@code id}; {@code record} and {@code fields}
 * are texts of canonical JSON. Each salt has 128 random bits, so that a guess of short contents cannot be confirmed with a
 * digest.
 *
 * <p>Agreement shows that the parts are the ones written at that place of the chain. It does not show that they are true, when
 * or by whom they were written (clock and author are the keeper's own), or, to someone who sees a part of the ledger, that no
 * revision was withheld.
 */
public final class Chain {
    private Chain() {}

    public static Digest digest(String text) {
        return Digest.of(text.getBytes(StandardCharsets.UTF_8));
    }

    static Digest hash(Revision revision) {
        return revision.form() instanceof Parted parted
                ? digest(chained(revision, digest(parted.publicText()), parted.privateDigestDue()))
                : digest(Canonical.json(whole(revision)));
    }

    static List<String> lines(Revision revision) {
        if (!(revision.form() instanceof Parted parted)) {
            return List.of(
                    Canonical.json(whole(revision).put("hash", revision.hash().hex())));
        }
        ObjectNode link = fields(revision, parted.publicDigest(), parted.privateDigest());
        ObjectNode content = JsonNodeFactory.instance.objectNode();
        content.put("content_of", revision.sequence());
        content.put("public", parted.publicText());
        if (parted.kept() != null) {
            content.put("private", parted.kept().text());
        }
        if (revision.redacted()) {
            content.put("redacted", true);
        }
        return List.of(Canonical.json(link.put("hash", revision.hash().hex())), Canonical.json(content));
    }

    /** What the hash of a revision of format 2 covers. */
    public static String chained(Revision revision, Digest publicDigest, Digest privateDigest) {
        return Canonical.json(fields(revision, publicDigest, privateDigest));
    }

    /** What the public digest of a revision of format 2 covers. */
    public static String publicText(String salt, String id, String shown) {
        ObjectNode text = JsonNodeFactory.instance.objectNode();
        text.put("salt", salt);
        text.put("id", id);
        text.put("record", shown);
        return Canonical.json(text);
    }

    private static ObjectNode fields(Revision revision, Digest publicDigest, Digest privateDigest) {
        ObjectNode fields = JsonNodeFactory.instance.objectNode();
        fields.put("format", 2);
        fields.put("sequence", revision.sequence());
        fields.put("kind", revision.key().kind());
        fields.put("version", revision.version());
        fields.put("act", act(revision));
        fields.put("written_at", revision.writtenAt().toString());
        fields.put("public_digest", publicDigest.hex());
        fields.put("private_digest", privateDigest.hex());
        fields.put("previous_hash", revision.previous().hex());
        if (revision.form() instanceof Parted parted && parted.before() != null) {
            fields.put("before", parted.before().hex());
        }
        return fields;
    }

    private static ObjectNode whole(Revision revision) {
        ObjectNode fields = JsonNodeFactory.instance.objectNode();
        fields.put("sequence", revision.sequence());
        fields.put("kind", revision.key().kind());
        fields.put("id", revision.key().id());
        fields.put("version", revision.version());
        fields.put("act", act(revision));
        fields.put("record", revision.json());
        fields.put("written_at", revision.writtenAt().toString());
        fields.put("author", revision.author());
        fields.put("note", revision.note());
        fields.put("previous_hash", revision.previous().hex());
        if (revision.redacted()) {
            fields.put("redacted", true);
        }
        return fields;
    }

    public static String act(Revision revision) {
        return revision.withdrawn() ? "withdraw" : "save";
    }
}
