package tenterbook.ledger.revision;

import java.util.List;
import java.util.Map;
import tenterbook.ledger.file.ArchiveFolder;

/**
 * What of a kind of record is private: it stands under a digest of its own, leaves the archive only by choice and can be
 * erased. Paths are stored names with dots between, {@code *} for every element of a list or member of an object, as in
 * {@code events.*.party}; {@code *} alone is the whole record.
 *
 * @param id whether the identifier itself names a person
 * @param fields paths of the private fields
 * @param names paths whose text names or reaches the person; only where {@code id}. Erasing looks for these words
 * @param persons paths that hold the identifier of a person, all of them within {@code fields}, each with the paths that
 *     go with it when that person is erased
 * @param files paths within {@code fields}, without {@code *}, that hold the SHA-256 of a file made from the record's words; it
 *     lies among the archive's {@link ArchiveFolder#papers}. When a person is taken out of those words, the member of the record
 *     that the path begins with goes too, and the file is deleted
 */
public record Privacy(
        boolean id, List<String> fields, List<String> names, Map<String, List<String>> persons, List<String> files) {
    /** Nothing is private but author and note, which always are. */
    public static final Privacy NONE = new Privacy(false, List.of(), List.of(), Map.of());
    /** For a kind that is not known here: all of the record, so that nothing is shown by mistake. */
    static final Privacy UNKNOWN = Privacy.of("*");

    public Privacy {
        fields = List.copyOf(fields);
        names = List.copyOf(names);
        persons = Map.copyOf(persons);
        files = List.copyOf(files);
    }

    /** For a kind from whose words no file is made. */
    public Privacy(boolean id, List<String> fields, List<String> names, Map<String, List<String>> persons) {
        this(id, fields, names, persons, List.of());
    }

    public static Privacy of(String... fields) {
        return new Privacy(false, List.of(fields), List.of(), Map.of());
    }
}
