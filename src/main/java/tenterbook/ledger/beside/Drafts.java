package tenterbook.ledger.beside;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.file.Database;

/** Forms typed and not yet saved, kept so that a reload, an error or another device loses nothing. */
public final class Drafts {
    private final Database database;
    private final Clock clock;

    public Drafts(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /**
     * @param name name of the form, as in {@code piece/V24-001}
     * @param body as the form encodes it
     */
    public record Draft(String name, String body, Instant savedAt) {}

    public void keep(String name, String body) {
        database.write(handle -> handle.createUpdate("""
                        INSERT INTO drafts (name, body, saved_at)
                        VALUES (:name, :body, :savedAt)
                        ON CONFLICT (name) DO UPDATE SET body = excluded.body, saved_at = excluded.saved_at
                        """)
                .bind("name", name)
                .bind("body", body)
                .bind("savedAt", clock.instant().truncatedTo(ChronoUnit.SECONDS).toString())
                .execute());
    }

    public Optional<Draft> find(String name) {
        return all().stream().filter(draft -> draft.name().equals(name)).findFirst();
    }

    /** All drafts, newest first. */
    public List<Draft> all() {
        return database.read(Drafts::all);
    }

    public void discard(String name) {
        database.write(handle -> discard(handle, name));
    }

    public static List<Draft> all(Handle handle) {
        return handle.createQuery("SELECT name, body, saved_at FROM drafts ORDER BY saved_at DESC, name")
                .map((row, context) -> new Draft(row.getString(1), row.getString(2), Instant.parse(row.getString(3))))
                .list();
    }

    public static int discard(Handle handle, String name) {
        return handle.createUpdate("DELETE FROM drafts WHERE name = :name")
                .bind("name", name)
                .execute();
    }
}
