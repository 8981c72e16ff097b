package tenterbook.ledger;

import java.time.Instant;
import tenterbook.measure.Digest;

/**
 * One link of the chain.
 *
 * @param sequence from 1, without gaps, over the whole archive
 * @param version from 1, without gaps, over one record
 * @param withdrawn whether this revision takes the record out of use; {@code json} is then what it last was
 * @param json the record as canonical JSON (RFC 8785)
 * @param note why, if the author said
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
        Digest hash) {

    /** What stands before the first revision. */
    public static final Digest NONE = new Digest("0".repeat(64));

    /** The hash that this revision's contents call for; equals {@link #hash} unless something was changed. */
    public Digest computedHash() {
        return Chain.hash(this);
    }

    /**
     * The revision as one line of canonical JSON, its fields under the names of the table's columns. Without the member
     * {@code "hash":"…",} the line's UTF-8 bytes are what the hash covers.
     */
    public String line() {
        return Chain.line(this);
    }
}
