package tenterbook.ledger;

import java.util.HashMap;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.RecordKey;

/** Random names that replace the identifiers of persons in revisions, so that an identifier can be erased. */
final class Handles {
    private Handles() {}

    /** The handle of a person, created if there is none. */
    static String of(Handle handle, RecordKey key, KnownKinds kinds) {
        return handle.createQuery("SELECT handle FROM handles WHERE kind = :kind AND id = :id")
                .bind("kind", key.kind())
                .bind("id", key.id())
                .mapTo(String.class)
                .findOne()
                .orElseGet(() -> {
                    String made = "handle-" + kinds.salt();
                    handle.createUpdate("INSERT INTO handles (kind, id, handle) VALUES (:kind, :id, :handle)")
                            .bind("kind", key.kind())
                            .bind("id", key.id())
                            .bind("handle", made)
                            .execute();
                    return made;
                });
    }

    /** The key of the revisions of format 2, by the person's own key. */
    static Map<RecordKey, RecordKey> all(Handle handle) {
        Map<RecordKey, RecordKey> all = new HashMap<>();
        handle.createQuery("SELECT kind, id, handle FROM handles")
                .map((row, context) -> all.put(
                        new RecordKey(row.getString(1), row.getString(2)),
                        new RecordKey(row.getString(1), row.getString(3))))
                .list();
        return all;
    }

    static void forget(Handle handle, RecordKey key) {
        handle.createUpdate("DELETE FROM handles WHERE kind = :kind AND id = :id")
                .bind("kind", key.kind())
                .bind("id", key.id())
                .execute();
    }
}
