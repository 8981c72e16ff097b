package tenterbook.recipe;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** A table of this room, as it stands on the class path beside the program. */
final class Table {
    private Table() {}

    static List<CSVRecord> rows(String name) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader reader = new InputStreamReader(
                Objects.requireNonNull(Table.class.getResourceAsStream(name), name), StandardCharsets.UTF_8)) {
            return format.parse(reader).getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException("The program's own table " + name + " cannot be read", e);
        }
    }

    /** Finds any of {@code words}, separated by '|', as whole words in text made by {@link #plain}. */
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
