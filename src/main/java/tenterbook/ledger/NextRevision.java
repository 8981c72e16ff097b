package tenterbook.ledger;

import java.time.Instant;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.revision.Chain;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.Privacy;
import tenterbook.ledger.revision.PrivatePart;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.RevisionForm.Parted;
import tenterbook.ledger.revision.TwoParts;
import tenterbook.measure.Digest;

/**
 * Creates the revision after the last: splits its record, salts and digests both parts and links it.
 *
 * @param sequence of the last revision; 0 in an empty ledger
 * @param last its hash
 * @param lastFormat its format; 0 in an empty ledger
 */
record NextRevision(Handle handle, KnownKinds kinds, long sequence, Digest last, int lastFormat) {
    Revision of(
            RecordKey key,
            Privacy privacy,
            int version,
            boolean withdraw,
            String text,
            Instant at,
            String author,
            String note) {
        Digest before = lastFormat == 1 ? EarlierParts.commit(handle, kinds).orElse(null) : null;
        String id = privacy.id() ? Handles.of(handle, key, kinds) : key.id();
        TwoParts parts = TwoParts.split(text, privacy);
        String salt = kinds.salt();
        PrivatePart kept =
                new PrivatePart(kinds.salt(), author, note, privacy.id() ? key.id() : null, parts.fields(), false);
        Digest publicDigest = Chain.digest(Chain.publicText(salt, id, parts.shown()));
        Parted form = new Parted(id, salt, parts.shown(), publicDigest, kept.digest(), before, kept);
        Revision bare =
                new Revision(sequence + 1, key, version, withdraw, text, at, author, note, last, Revision.NONE, form);
        Digest hash = Chain.digest(Chain.chained(bare, publicDigest, form.privateDigest()));
        return new Revision(bare.sequence(), key, version, withdraw, text, at, author, note, last, hash, form);
    }
}
