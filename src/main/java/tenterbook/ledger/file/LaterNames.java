package tenterbook.ledger.file;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * Identifiers that records were given after their first one: by this ledger's rule, the texts in the member {@code laterNumbers} of a
 * record of any kind. They are read from every revision ever written, by an index of the few that have any, so that one stays taken
 * when a record loses it.
 */
public final class LaterNames {
    private static final String EVERY = """
            FROM revisions AS r, json_each(r.record, '$.laterNumbers') AS later
            WHERE r.record ->> '$.laterNumbers' IS NOT NULL AND r.kind = :kind
            """;

    /** Those of {@code :kind} like {@code :like}. */
    public static final String BEGINNING = "SELECT later.value " + EVERY + " AND later.value LIKE :like";

    private LaterNames() {}

    /** The first identifier of the record that has or had {@code name} as a later one; empty where none did. */
    public static Optional<String> first(Handle handle, String kind, String name) {
        return handle.createQuery("SELECT r.id " + EVERY + " AND later.value IN (<names>) LIMIT 1")
                .bind("kind", kind)
                .bindList("names", inAnyCase(name))
                .mapTo(String.class)
                .findOne();
    }

    /** All of a kind. */
    public static List<String> all(Handle handle, String kind) {
        return handle.createQuery("SELECT DISTINCT later.value " + EVERY)
                .bind("kind", kind)
                .mapTo(String.class)
                .list();
    }

    /** The first identifier of the record that has or had {@code name}, also in small or capital letters; empty where it is free. */
    public static Optional<String> holder(Handle handle, String kind, String name) {
        return handle.createQuery("SELECT id FROM current WHERE kind = :kind AND id IN (<names>) LIMIT 1")
                .bind("kind", kind)
                .bindList("names", inAnyCase(name))
                .mapTo(String.class)
                .findOne()
                .or(() -> first(handle, kind, name));
    }

    private static List<String> inAnyCase(String name) {
        return List.of(name, name.toUpperCase(Locale.ROOT), name.toLowerCase(Locale.ROOT));
    }
}
