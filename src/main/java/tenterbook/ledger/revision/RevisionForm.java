package tenterbook.ledger.revision;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;

/** The stored form of a revision: whole, as in format 1, or in two parts, as in format 2. */
public sealed interface RevisionForm {
    /**
     * Format 1: one row, hashed as a whole.
     *
     * @param redacted whether an erasure removed values, so that it no longer matches its hash
     */
    record Whole(boolean redacted) implements RevisionForm {}

    /**
     * Format 2.
     *
     * @param id the identifier, or a handle for one that names a person
     * @param salt of the public digest, in hex
     * @param shown the record's public part, canonical JSON
     * @param before what the first revision of format 2 commits to, see {@link EarlierPart}; else null
     * @param kept the private part; null where it was erased
     */
    record Parted(
            String id,
            String salt,
            String shown,
            Digest publicDigest,
            Digest privateDigest,
            @Nullable Digest before,
            @Nullable PrivatePart kept)
            implements RevisionForm {
        public String publicText() {
            return Chain.publicText(salt, id, shown);
        }

        /** The record's private fields without what was erased. */
        public String fields() {
            return kept == null ? TwoParts.NO_FIELDS : kept.fields();
        }

        /** The digest of the private part where that is whole; else the stored one. */
        public Digest privateDigestDue() {
            return kept == null || kept.redacted() ? privateDigest : kept.digest();
        }
    }
}
