package tenterbook.ledger.revision;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import tenterbook.ledger.revision.RevisionForm.Whole;
import tenterbook.measure.Digest;

/**
 * A revision of format 1 in two parts, as the first revision of format 2 commits to it. That revision's {@code before} is the
 * SHA-256 of the canonical JSON array of {@link #row} of each, in order.
 *
 * <p>The public digest covers {@code salt, id, kind, version, act, written_at, record}, since the hash of a revision of format
 * 1 also covers private values and cannot be recomputed without them; the private one is as in format 2.
 *
 * <p>That hash has no salt: with it and the one before it prices and names could be guessed and confirmed. So a row has it only
 * within a digest that also covers the private digest, which cannot be guessed, and all rows may be shown to anyone.
 *
 * @param key with the handle instead of an identifier that names a person
 * @param publicSalt in hex
 * @param privateSalt in hex; empty where something was erased
 * @param pointers which members (RFC 6901) are private
 * @param revision the revision as it stands
 */
public record EarlierPart(
        Revision revision,
        RecordKey key,
        String publicSalt,
        Digest publicDigest,
        String privateSalt,
        Digest privateDigest,
        List<String> pointers) {

    /** As in the commitment: sequence, public digest, SHA-256 of {@link #link}. */
    public String row() {
        return "[%d,\"%s\",\"%s\"]".formatted(revision.sequence(), publicDigest, Chain.digest(link()));
    }

    /** Hash and private digest, as a canonical JSON array. Shown only with the private part. */
    public String link() {
        return "[\"%s\",\"%s\"]".formatted(revision.hash(), privateDigest);
    }

    /**
     * The row with salts and pointers, as one line of canonical JSON; with the revision's own line everything can be
     * recomputed.
     */
    public String line() {
        ObjectNode line = JsonNodeFactory.instance.objectNode();
        line.put("sequence", revision.sequence());
        line.put("id", key.id());
        line.put("public_salt", publicSalt);
        line.put("public_digest", publicDigest.hex());
        line.put("private_salt", privateSalt);
        line.put("private_digest", privateDigest.hex());
        pointers.forEach(line.putArray("pointers")::add);
        return Canonical.json(line);
    }

    /** What the public digest covers. */
    public String publicText() {
        ObjectNode text = JsonNodeFactory.instance.objectNode();
        text.put("salt", publicSalt);
        text.put("id", key.id());
        text.put("kind", key.kind());
        text.put("version", revision.version());
        text.put("act", Chain.act(revision));
        text.put("written_at", revision.writtenAt().toString());
        text.put("record", parts().shown());
        return Canonical.json(text);
    }

    /** What the private digest covers; empty where something of it was erased. */
    public Optional<String> privateText() {
        return revision.redacted() ? Optional.empty() : Optional.of(kept().text());
    }

    /** The private part without what was erased. */
    public PrivatePart kept() {
        return new PrivatePart(
                privateSalt,
                revision.author(),
                revision.note(),
                revision.key().equals(key) ? null : revision.key().id(),
                parts().fields(),
                ((Whole) revision.form()).redacted());
    }

    public TwoParts parts() {
        return TwoParts.split(revision.json(), pointers);
    }
}
