package tenterbook.ledger.revision;

import java.util.List;
import java.util.function.Function;

/**
 * Parts inside records that other records name, such as the states of a board pair: one in use must not vanish.
 *
 * @param has the names of the parts that a record has
 * @param names the parts of other records that a record names
 */
public record NamedParts<T>(Function<T, List<String>> has, Function<T, List<Use>> names) {
    /** A part of another record, by its name there. */
    public record Use(RecordKey record, String part) {}

    public static <T> NamedParts<T> none() {
        return new NamedParts<>(record -> List.of(), record -> List.of());
    }
}
