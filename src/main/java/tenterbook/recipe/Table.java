package tenterbook.recipe;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import tenterbook.measure.OwnTable;

/** Tables of this package. */
final class Table {
    private Table() {}

    static List<CSVRecord> rows(String name) {
        return OwnTable.rows("/tenterbook/recipe/" + name);
    }

    /** Matches any of {@code words}, separated by '|', as whole words in a text made by {@link #plain}. */
    static Pattern words(String words) {
        String any = Arrays.stream(words.split("\\|"))
                .map(String::strip)
                .map(Pattern::quote)
                .reduce((a, b) -> a + "|" + b)
                .orElseThrow();
        return Pattern.compile("(?<![\\p{L}])(" + any + ")(?![\\p{L}])");
    }

    /** Lower case and British spelling. */
    static String plain(String text) {
        return text.toLowerCase(Locale.ROOT)
                .replace("sulf", "sulph")
                .replace("aluminum", "aluminium")
                .replaceAll("[\\s\\p{Z}_-]+", " ");
    }
}
