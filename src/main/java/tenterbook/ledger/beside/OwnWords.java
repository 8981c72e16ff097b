package tenterbook.ledger.beside;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Predicate;
import org.jdbi.v3.core.Handle;
import tenterbook.ledger.file.Database;

/** The maker's own words, each with what it means in words that a question is read by. No part of the chain; packed with the archive. */
public final class OwnWords {
    private final Database database;

    public OwnWords(Database database) {
        this.database = database;
    }

    /** What each means, in the order in which they were put down. */
    public Map<String, String> means() {
        return database.read(OwnWords::means);
    }

    private static Map<String, String> means(Handle handle) {
        Map<String, String> means = new LinkedHashMap<>();
        handle.createQuery("SELECT word, means FROM own_words ORDER BY place, word")
                .map((row, context) -> Map.entry(row.getString(1), row.getString(2)))
                .forEach(each -> means.put(each.getKey(), each.getValue()));
        return means;
    }

    /** Puts these in the place of all that were there. */
    public void replace(Map<String, String> means) {
        database.write(handle -> replace(handle, means));
    }

    /**
     * Deletes those that name a person.
     *
     * @param named whether a text names the person
     * @return how many
     */
    public static int forget(Handle handle, Predicate<String> named) {
        Map<String, String> all = means(handle);
        all.entrySet().removeIf(each -> !named.test(each.getKey()) && !named.test(each.getValue()));
        all.keySet().forEach(word -> handle.execute("DELETE FROM own_words WHERE word = ?", word));
        return all.size();
    }

    private static int replace(Handle handle, Map<String, String> means) {
        handle.execute("DELETE FROM own_words");
        int place = 0;
        for (Map.Entry<String, String> each : means.entrySet()) {
            handle.createUpdate("INSERT INTO own_words (place, word, means) VALUES (:place, :word, :means)")
                    .bind("place", place++)
                    .bind("word", each.getKey())
                    .bind("means", each.getValue())
                    .execute();
        }
        return place;
    }
}
