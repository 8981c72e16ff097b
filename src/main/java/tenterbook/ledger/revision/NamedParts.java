package tenterbook.ledger.revision;

import java.util.List;
import java.util.function.Function;

/**
 * Parts of records that other records refer to, such as the states of a board pair; one in use must not be removed.
 *
 * @param own the names of a record's parts
 * @param references the parts of other records that a record refers to
 */
public record NamedParts<T>(Function<T, List<String>> own, Function<T, List<Use>> references) {
    /** A part of another record, by its name. */
    public record Use(RecordKey record, String part) {}

    public static <T> NamedParts<T> none() {
        return new NamedParts<>(record -> List.of(), record -> List.of());
    }
}
