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
 * @param key of an erased person, the handle stands in the place of the identifier
 * @param version from 1, without gaps, over one record
 * @param withdrawn whether this revision takes the record out of use; {@code json} is then what it last was
 * @param json the record as canonical JSON (RFC 8785), without what was erased
 * @param author empty where erased
 * @param note why, if the author said; empty where erased
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

    /** What stands before the first revision. */
    public static final Digest NONE = new Digest("0".repeat(64));

    /**
     * The hash that this revision's contents call for; equals {@link #hash} unless something was changed. Of format 2 it
     * covers the private part as far as that was not erased; of format 1, a redacted revision can give its hash no more.
     */
    public Digest computedHash() {
        return Chain.hash(this);
    }

    /** 1 or 2. */
    public int format() {
        return form instanceof Whole ? 1 : 2;
    }

    /** Whether an erasure took something out of it. */
    public boolean redacted() {
        return form instanceof Parted parted
                ? parted.kept() == null || parted.kept().redacted()
                : ((Whole) form).redacted();
    }

    /**
     * The revision as text: lines of canonical JSON. The first has a member {@code hash}; without {@code "hash":"…",} its
     * UTF-8 bytes are what the hash covers. That is all of a revision of format 1. One of format 2 has a second line with
     * what the public and the private digest cover, as texts.
     */
    public List<String> lines() {
        return Chain.lines(this);
    }

    /** What the hash of a revision of format 2 covers, canonical JSON; of digests, without any content. Empty for format 1. */
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
