package tenterbook.ledger.revision;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import tenterbook.ledger.revision.RevisionForm.Parted;
import tenterbook.ledger.revision.RevisionForm.Whole;
import tenterbook.measure.Digest;

/**
 * One link of the chain.
 *
 * @param sequence from 1, without gaps, over the whole archive
 * @param key with the handle instead of the identifier of an erased person
 * @param version from 1, without gaps, over one record
 * @param withdrawn whether this revision withdraws the record; {@code json} is then its last content
 * @param json the record as canonical JSON (RFC 8785), without what was erased
 * @param author empty where erased
 * @param note the author's reason; may be empty, and is where erased
 */
public record Revision(
        long sequence,
        RecordKey key,
        int version,
        boolean withdrawn,
        String json,
        Instant writtenAt,
        String author,
        String note,
        Digest previous,
        Digest hash,
        RevisionForm form) {

    /** The previous hash of the first revision. */
    public static final Digest NONE = new Digest("0".repeat(64));

    /**
     * The hash of this revision's contents; equals {@link #hash} unless something was changed. In format 2 it covers the
     * private part unless erased; in format 1 a redacted revision no longer matches its hash.
     */
    public Digest computedHash() {
        return Chain.hash(this);
    }

    /** 1 or 2. */
    public int format() {
        return form instanceof Whole ? 1 : 2;
    }

    /** Whether an erasure removed something from it. */
    public boolean redacted() {
        return form instanceof Parted parted
                ? parted.kept() == null || parted.kept().redacted()
                : ((Whole) form).redacted();
    }

    /**
     * The revision as lines of canonical JSON. The first has a member {@code hash}; without {@code "hash":"…",} its UTF-8 bytes
     * are what the hash covers. A revision of format 2 has a second line with the texts that the public and the private digest
     * cover.
     */
    public List<String> lines() {
        return Chain.lines(this);
    }

    /** What the hash of a revision of format 2 covers: canonical JSON of digests, without content. Empty for format 1. */
    public Optional<String> chained() {
        return form instanceof Parted parted
                ? Optional.of(Chain.chained(this, parted.publicDigest(), parted.privateDigest()))
                : Optional.empty();
    }

    /** What the public digest of a revision of format 2 covers; empty for format 1, see {@link EarlierPart}. */
    public Optional<String> publicText() {
        return form instanceof Parted parted ? Optional.of(parted.publicText()) : Optional.empty();
    }

    /** What the private digest of a revision of format 2 covers; empty where something of it was erased. */
    public Optional<String> privateText() {
        return form instanceof Parted parted
                ? Optional.ofNullable(parted.kept())
                        .filter(part -> !part.redacted())
                        .map(PrivatePart::text)
                : Optional.empty();
    }
}
