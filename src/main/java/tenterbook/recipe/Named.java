package tenterbook.recipe;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;

/**
 * Rows of a table that a text names.
 *
 * @param <T> what a row says
 */
final class Named<T> {
    private record Row<T>(Pattern words, T says) {}

    private record Found<T>(int from, int to, T says) {
        boolean within(Found<T> other) {
            return other.from <= from && to <= other.to && other.to - other.from > to - from;
        }
    }

    private final List<Row<T>> rows;

    Named(List<CSVRecord> rows, Function<CSVRecord, T> says) {
        this.rows = rows.stream()
                .map(row -> new Row<>(longestFirst(row.get("words")), says.apply(row)))
                .toList();
    }

    private static Pattern longestFirst(String words) {
        return Table.words(Arrays.stream(words.split("\\|"))
                .sorted(Comparator.comparingInt(String::length).reversed())
                .reduce((one, other) -> one + "|" + other)
                .orElseThrow());
    }

    /** In the table's order; a name that is part of a longer one, as 'alum' of 'chrome alum', is not meant. */
    List<T> in(String text) {
        String plain = Table.plain(text);
        List<Found<T>> found = rows.stream()
                .flatMap(row -> row.words
                        .matcher(plain)
                        .results()
                        .map(match -> new Found<>(match.start(), match.end(), row.says)))
                .toList();
        return found.stream()
                .filter(each -> found.stream().noneMatch(each::within))
                .map(Found::says)
                .distinct()
                .toList();
    }
}
