package tenterbook.ledger;

import java.util.HashMap;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.RecordKey;

/** The random names under which the revisions of persons stand, so that an identifier can be forgotten. */
final class Handles {
    private Handles() {}

    /** The handle of a person, given now if there was none. */
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

    /** By the person's own key, the key under which the revisions of format 2 stand. */
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
