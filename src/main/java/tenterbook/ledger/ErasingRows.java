package tenterbook.ledger;

import java.util.Collection;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.Erasing.Redaction;
import tenterbook.ledger.beside.Drafts;
import tenterbook.ledger.beside.OwnWords;
import tenterbook.ledger.beside.SavedSearches;
import tenterbook.ledger.revision.PrivatePart;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.TwoParts;

/** The SQL of an erasure. */
final class ErasingRows {
    private final Handle handle;

    ErasingRows(Handle handle) {
        this.handle = handle;
    }

    /** Every record in use except the person's own. */
    static List<RecordKey> inUse(Handle handle, RecordKey person) {
        return handle.createQuery("""
                        SELECT c.kind, c.id
                        FROM current AS c
                        JOIN revisions AS r ON r.sequence = c.sequence
                        WHERE r.act = 'save' AND NOT (c.kind = :kind AND c.id = :id)
                        ORDER BY c.sequence
                        """)
                .bind("kind", person.kind())
                .bind("id", person.id())
                .map((row, context) -> new RecordKey(row.getString(1), row.getString(2)))
                .list();
    }

    /** Until {@link #end} the triggers allow changes to the revisions that the erasure names. */
    void begin(long erasure, Collection<Long> sequences) {
        for (long sequence : sequences) {
            handle.createUpdate("INSERT INTO erased (sequence, erasure) VALUES (:sequence, :erasure)")
                    .bind("sequence", sequence)
                    .bind("erasure", erasure)
                    .execute();
        }
    }

    void end(long erasure) {
        handle.createUpdate("UPDATE erased SET done = 1 WHERE erasure = :erasure")
                .bind("erasure", erasure)
                .execute();
    }

    /** Deletes all of the person's own revision of format 2 but its public part; for format 1 see {@link #empty}. */
    void delete(Revision revision) {
        for (String table : List.of("private_parts", "current_texts")) {
            handle.createUpdate("DELETE FROM " + table + " WHERE sequence = :sequence")
                    .bind("sequence", revision.sequence())
                    .execute();
        }
    }

    void empty(Redaction redaction, String stand) {
        handle.createUpdate("""
                        UPDATE revisions
                        SET id = :id, record = :record, author = '', note = '', redacted = 1
                        WHERE sequence = :sequence
                        """)
                .bind("id", stand)
                .bind("record", redaction.shown())
                .bind("sequence", redaction.sequence())
                .execute();
        dropSalt(redaction.sequence());
    }

    /** Stores the salt of the digest of what remains, replacing an older one. @param kept null where no private part remains */
    void remain(long sequence, @Nullable PrivatePart kept) {
        handle.createUpdate("DELETE FROM remains WHERE sequence = :sequence")
                .bind("sequence", sequence)
                .execute();
        if (kept != null) {
            handle.createUpdate("INSERT INTO remains (sequence, salt) VALUES (:sequence, :salt)")
                    .bind("sequence", sequence)
                    .bind("salt", kept.salt())
                    .execute();
        }
    }

    void redact(Redaction redaction) {
        PrivatePart kept = redaction.kept();
        String record = new TwoParts(redaction.shown(), kept.fields()).merged();
        if (redaction.whole()) {
            handle.createUpdate("""
                            UPDATE revisions
                            SET record = :record, author = :author, note = :note, redacted = 1
                            WHERE sequence = :sequence
                            """)
                    .bind("record", record)
                    .bind("author", kept.author())
                    .bind("note", kept.note())
                    .bind("sequence", redaction.sequence())
                    .execute();
            dropSalt(redaction.sequence());
            return;
        }
        handle.createUpdate("""
                        UPDATE private_parts
                        SET salt = '', author = :author, note = :note, fields = :fields, redacted = 1
                        WHERE sequence = :sequence
                        """)
                .bind("author", kept.author())
                .bind("note", kept.note())
                .bind("fields", kept.fields())
                .bind("sequence", redaction.sequence())
                .execute();
        if (kept.fields().equals(TwoParts.NO_FIELDS)) {
            handle.createUpdate("DELETE FROM current_texts WHERE sequence = :sequence")
                    .bind("sequence", redaction.sequence())
                    .execute();
        } else {
            handle.createUpdate("UPDATE current_texts SET record = :record WHERE sequence = :sequence")
                    .bind("record", record)
                    .bind("sequence", redaction.sequence())
                    .execute();
        }
    }

    private void dropSalt(long sequence) {
        handle.createUpdate("UPDATE earlier_parts SET private_salt = '' WHERE sequence = :sequence")
                .bind("sequence", sequence)
                .execute();
    }

    void forget(RecordKey person, String stand) {
        for (String id : List.of(person.id(), stand)) {
            handle.createUpdate("""
                            DELETE FROM reference
                            WHERE from_kind = :kind AND from_id = :id OR to_kind = :kind AND to_id = :id
                            """).bind("kind", person.kind()).bind("id", id).execute();
            handle.createUpdate("DELETE FROM current WHERE kind = :kind AND id = :id")
                    .bind("kind", person.kind())
                    .bind("id", id)
                    .execute();
        }
        Handles.forget(handle, person);
    }

    /** @return how many were deleted */
    int dropDrafts(PersonalTraces traces) {
        int dropped = 0;
        List<Drafts.Draft> drafts = Drafts.all(handle);
        for (Drafts.Draft draft : drafts) {
            if (traces.inDraft(draft.name()) || traces.inDraft(draft.body())) {
                dropped += Drafts.discard(handle, draft.name());
            }
        }
        return dropped;
    }

    /** @return how many were deleted */
    int dropSearchesAndWords(PersonalTraces traces) {
        return SavedSearches.forget(handle, traces::inDraft) + OwnWords.forget(handle, traces::inDraft);
    }
}
