package tenterbook.ledger;

import java.util.List;
import tenterbook.ledger.revision.RecordKey;

/**
 * The outcome of an erasure.
 *
 * @param erasure the sequence of its revision
 * @param revisions of the person's own record, all of whose private parts are gone
 * @param changed other records in use that named the person and now have a new revision without the name
 * @param redacted older revisions of other records out of which something was taken
 * @param drafts how many drafts that named the person were deleted
 * @param searches how many saved searches and own words that named the person were deleted
 * @param left places where a name still stands, because they are in a public part
 * @param files how many stored files were deleted: those made from records that named the person, and those that no record
 *     names
 */
public record Erased(
        long erasure,
        int revisions,
        List<RecordKey> changed,
        int redacted,
        int drafts,
        int searches,
        List<String> left,
        int files) {
    Erased withFiles(int deleted) {
        return new Erased(erasure, revisions, changed, redacted, drafts, searches, left, deleted);
    }
}
