package tenterbook.piece.condition;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;

/**
 * Plain words for what is seen on cloth, for where, and for how one looks. They are offered, never demanded: any other word is
 * taken as it is.
 */
public final class ConditionWords {
    private static final List<Word> ALL = read("condition-words.csv");

    private ConditionWords() {}

    /** @param meaning for someone who does not know the word; may be empty */
    public record Word(String of, String word, String meaning) {}

    /** What may be seen, as in 'stain'. */
    public static List<Word> what() {
        return of("what");
    }

    /** Parts of a piece, as in 'upper edge', in the order in which they are looked at. */
    public static List<Word> zones() {
        return of("zone");
    }

    /** Ways of looking, as in 'raking light'. */
    public static List<Word> means() {
        return of("means");
    }

    private static List<Word> of(String list) {
        return ALL.stream().filter(word -> word.of().equals(list)).toList();
    }

    private static List<Word> read(String name) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader reader = new InputStreamReader(
                Objects.requireNonNull(ConditionWords.class.getResourceAsStream(name), name), StandardCharsets.UTF_8)) {
            return format.parse(reader).stream()
                    .map(row -> new Word(row.get("list"), row.get("word"), row.get("meaning")))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("The program's own table " + name + " cannot be read", e);
        }
    }
}
