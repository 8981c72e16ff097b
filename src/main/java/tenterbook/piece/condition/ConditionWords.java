package tenterbook.piece.condition;

import java.util.List;
import tenterbook.measure.OwnTable;

/**
 * Suggested words for what is seen on cloth, for parts of a piece and for means of examination. Any other word is accepted as
 * it is.
 */
public final class ConditionWords {
    private static final List<Word> ALL = read("condition-words.csv");

    private ConditionWords() {}

    /** @param meaning for someone who does not know the word; may be empty */
    public record Word(String of, String word, String meaning) {}

    /** Observations, as in 'stain'. */
    public static List<Word> what() {
        return of("what");
    }

    /** Parts of a piece, as in 'upper edge', in the order of an examination. */
    public static List<Word> zones() {
        return of("zone");
    }

    /** Means of examination, as in 'raking light'. */
    public static List<Word> means() {
        return of("means");
    }

    private static List<Word> of(String list) {
        return ALL.stream().filter(word -> word.of().equals(list)).toList();
    }

    private static List<Word> read(String name) {
        return OwnTable.rows("/tenterbook/piece/condition/" + name).stream()
                .map(row -> new Word(row.get("list"), row.get("word"), row.get("meaning")))
                .toList();
    }
}
