package tenterbook.ledger.beside;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.file.Database;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Searches kept under a name, in a plain table beside the ledger. They are packed and restored with it. A name is used once;
 * the search removed last can be brought back.
 */
public final class SavedSearches {
    /** What a list of them can still be looked through. */
    public static final int MOST = 200;

    public static final int LONGEST_NAME = 100;

    /** A question has at most 400 letters, each up to nine bytes in an address; the rest is room for parameters. */
    private static final int LONGEST_QUESTION = 8000;

    private static final String ROW = "SELECT id, name, question, saved_at FROM saved_searches ";

    private final Database database;
    private final Clock clock;

    public SavedSearches(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /** @param question the parameters of an address, as in {@code q=linen&view=table}; empty for every piece */
    public record SavedSearch(long id, String name, String question, Instant savedAt) {}

    /** By name. */
    public List<SavedSearch> all() {
        return database.read(handle -> rows(handle, "WHERE removed_at IS NULL ORDER BY name COLLATE NOCASE, name, id"));
    }

    public Optional<SavedSearch> find(long id) {
        return database.read(handle -> find(handle, id));
    }

    /** The one removed last; empty where none was, or where it was brought back. */
    public Optional<SavedSearch> removed() {
        return database.read(handle -> rows(handle, "WHERE removed_at IS NOT NULL")).stream()
                .findFirst();
    }

    /**
     * Saves one.
     *
     * @param replace whether it takes the place of one with the same name, which keeps its id
     * @throws NameTaken where there is one and {@code replace} is false
     * @throws Refusal where the name is empty or too long, the question too long, or there are {@value #MOST} already
     */
    public SavedSearch save(String name, String question, boolean replace) {
        String tidy = tidy(name);
        if (question.length() > LONGEST_QUESTION) {
            throw Refusal.of("searches.question-too-long", "most", LONGEST_QUESTION);
        }
        return database.write(handle -> {
            Optional<SavedSearch> same = named(handle, tidy);
            if (same.isPresent() && !replace) {
                throw new NameTaken(tidy);
            }
            if (same.isEmpty() && rows(handle, "WHERE removed_at IS NULL").size() >= MOST) {
                throw Refusal.of("searches.too-many", "most", MOST);
            }
            String sql = same.isPresent()
                    ? "UPDATE saved_searches SET question = :question, saved_at = :now WHERE name = :name AND removed_at IS NULL"
                    : "INSERT INTO saved_searches (name, question, saved_at) VALUES (:name, :question, :now)";
            handle.createUpdate(sql)
                    .bind("name", tidy)
                    .bind("question", question)
                    .bind("now", now())
                    .execute();
            return named(handle, tidy).orElseThrow();
        });
    }

    /**
     * Gives one another name.
     *
     * @return empty where there is none with this id
     * @throws NameTaken where another has the name
     * @throws Refusal where the name is empty or too long
     */
    public Optional<SavedSearch> rename(long id, String name) {
        String tidy = tidy(name);
        return database.write(handle -> {
            mustBeFree(handle, tidy, id);
            handle.createUpdate("UPDATE saved_searches SET name = :name WHERE id = :id AND removed_at IS NULL")
                    .bind("name", tidy)
                    .bind("id", id)
                    .execute();
            return find(handle, id);
        });
    }

    /**
     * Removes one; it can be brought back until another is removed.
     *
     * @return the one removed; empty where there is none with this id
     */
    public Optional<SavedSearch> remove(long id) {
        return database.write(handle -> {
            Optional<SavedSearch> gone = find(handle, id);
            if (gone.isPresent()) {
                handle.execute("DELETE FROM saved_searches WHERE removed_at IS NOT NULL");
                handle.createUpdate("UPDATE saved_searches SET removed_at = :now WHERE id = :id")
                        .bind("now", now())
                        .bind("id", id)
                        .execute();
            }
            return gone;
        });
    }

    /**
     * Brings back the one removed last.
     *
     * @return empty where it is not the one with this id
     * @throws NameTaken where another has its name meanwhile
     */
    public Optional<SavedSearch> bringBack(long id) {
        return database.write(handle -> {
            Optional<SavedSearch> gone = rows(handle, "WHERE removed_at IS NOT NULL").stream()
                    .filter(each -> each.id() == id)
                    .findFirst();
            gone.ifPresent(search -> {
                mustBeFree(handle, search.name(), id);
                handle.createUpdate("UPDATE saved_searches SET removed_at = NULL WHERE id = :id")
                        .bind("id", id)
                        .execute();
            });
            return gone;
        });
    }

    /**
     * Deletes those that name a person, one that was removed among them.
     *
     * @param named whether a text names the person, form-encoded or not
     * @return how many
     */
    public static int forget(Handle handle, Predicate<String> named) {
        int dropped = 0;
        for (SavedSearch search : rows(handle, "")) {
            if (named.test(search.name()) || named.test(search.question())) {
                dropped += handle.createUpdate("DELETE FROM saved_searches WHERE id = :id")
                        .bind("id", search.id())
                        .execute();
            }
        }
        return dropped;
    }

    private static String tidy(String name) {
        String tidy = name.replaceAll("[\\s\\p{Z}\\p{Cntrl}]+", " ").strip();
        if (tidy.isEmpty()) {
            throw Refusal.of("searches.no-name");
        }
        if (tidy.length() > LONGEST_NAME) {
            throw Refusal.of("searches.name-too-long", "most", LONGEST_NAME, "found", tidy.length());
        }
        return tidy;
    }

    private static void mustBeFree(Handle handle, String name, long id) {
        if (named(handle, name).filter(other -> other.id() != id).isPresent()) {
            throw new NameTaken(name);
        }
    }

    private static Optional<SavedSearch> named(Handle handle, String name) {
        return rows(handle, "WHERE removed_at IS NULL").stream()
                .filter(each -> each.name().equals(name))
                .findFirst();
    }

    private static Optional<SavedSearch> find(Handle handle, long id) {
        return rows(handle, "WHERE removed_at IS NULL").stream()
                .filter(each -> each.id() == id)
                .findFirst();
    }

    /** Few enough to be read whole. */
    private static List<SavedSearch> rows(Handle handle, String which) {
        return handle.createQuery(ROW + which)
                .map((row, context) -> new SavedSearch(
                        row.getLong(1), row.getString(2), row.getString(3), Instant.parse(row.getString(4))))
                .list();
    }

    private String now() {
        return clock.instant().truncatedTo(ChronoUnit.SECONDS).toString();
    }

    /** Another search has the name. */
    public static final class NameTaken extends Refusal {
        private static final long serialVersionUID = 1L;

        NameTaken(String name) {
            super(Message.of("searches.name-taken", "name", name));
        }
    }
}
