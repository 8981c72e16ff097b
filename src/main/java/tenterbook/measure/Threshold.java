package tenterbook.measure;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;

/**
 * A figure that decides what a page says, with where it is from.
 *
 * @param id by which the code reads it and a page links to it
 * @param title a short name for readers
 * @param values one or more
 * @param says what it is, with its unit
 * @param source empty where it has none but the reason in {@code says}
 * @param passage the words that were read; may be empty
 * @param status as the table explains
 */
public record Threshold(
        String id, String title, List<Double> values, String says, String source, String passage, String status) {
    private static final Map<String, Threshold> BY_ID =
            rows().collect(Collectors.toMap(Threshold::id, Function.identity()));

    public Threshold {
        values = List.copyOf(values);
    }

    /** All, in the order of the table. */
    public static List<Threshold> all() {
        return rows().toList();
    }

    /** The value of a row that has one. @throws IllegalStateException if there is no such row, or it has several */
    public static double number(String id) {
        List<Double> values = numbers(id);
        if (values.size() != 1) {
            throw new IllegalStateException("The figure " + id + " has " + values.size() + " values");
        }
        return values.get(0);
    }

    /** @throws IllegalStateException if there is no such row */
    public static List<Double> numbers(String id) {
        return of(id).values;
    }

    /** @throws IllegalStateException if there is no such row */
    public static Threshold of(String id) {
        Threshold found = BY_ID.get(id);
        if (found == null) {
            throw new IllegalStateException("thresholds.csv has no figure " + id);
        }
        return found;
    }

    private static Stream<Threshold> rows() {
        return OwnTable.rows("/tenterbook/measure/thresholds.csv").stream().map(Threshold::of);
    }

    private static Threshold of(CSVRecord row) {
        return new Threshold(
                row.get("id"),
                row.get("title"),
                Stream.of(row.get("value").split("\\|")).map(Double::valueOf).toList(),
                row.get("says"),
                row.get("source"),
                row.get("passage"),
                row.get("status"));
    }
}
