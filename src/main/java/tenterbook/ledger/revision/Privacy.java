package tenterbook.ledger.revision;

import java.util.List;
import java.util.Map;
import tenterbook.ledger.file.ArchiveFolder;

/**
 * The private fields of a kind of record: they have a digest of their own, leave the archive only by choice and can be erased.
 * Paths are stored names joined by dots, {@code *} for every element of a list or member of an object, as in {@code
 * events.*.party}; {@code *} alone is the whole record.
 *
 * @param id whether the identifier itself names a person
 * @param fields paths of the private fields
 * @param names paths with names and addresses of the person, which an erasure searches for; only where {@code id}
 * @param persons paths of identifiers of persons, all of them within {@code fields}, each with the paths to erase along with it
 * @param files paths within {@code fields}, without {@code *}, of the SHA-256 of a file made from the record's words, which is
 *     in {@link ArchiveFolder#papers}. When a person is erased from those words, the first member of the path is removed and
 *     the file deleted
 */
public record Privacy(
        boolean id, List<String> fields, List<String> names, Map<String, List<String>> persons, List<String> files) {
    /** Only author and note are private, as always. */
    public static final Privacy NONE = new Privacy(false, List.of(), List.of(), Map.of());
    /** For an unknown kind: the whole record, so that nothing is shown by mistake. */
    static final Privacy UNKNOWN = Privacy.of("*");

    public Privacy {
        fields = List.copyOf(fields);
        names = List.copyOf(names);
        persons = Map.copyOf(persons);
        files = List.copyOf(files);
    }

    /** For a kind without files. */
    public Privacy(boolean id, List<String> fields, List<String> names, Map<String, List<String>> persons) {
        this(id, fields, names, persons, List.of());
    }

    public static Privacy of(String... fields) {
        return new Privacy(false, List.of(fields), List.of(), Map.of());
    }
}
