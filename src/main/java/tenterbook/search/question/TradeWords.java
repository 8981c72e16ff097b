package tenterbook.search.question;

import java.util.List;
import java.util.Set;
import tenterbook.measure.OwnTable;
import tenterbook.words.Message;

/** The words that come with the program for what a record has, for people to look up. */
public final class TradeWords {
    /** Kinds whose value is a list of several. */
    private static final Set<String> LISTS = Set.of("status", "category", "hue", "depth");

    private static final List<String> SHOWN = List.of(
            "made",
            "category",
            "status",
            "event",
            "occasion",
            "fibre",
            "dye",
            "mordant",
            "fault",
            "any",
            "hue",
            "depth",
            "order",
            "lacking",
            "wood");

    private TradeWords() {}

    /**
     * Words that mean the same.
     *
     * @param subject what they are about, as in 'Dye'
     * @param meaning the value they stand for, as in 'woad'
     * @param language en, pt or ja
     * @param practice whether they are common practice of the trade, else plain vocabulary from memory
     */
    public record Row(Message subject, String meaning, String words, String language, boolean practice) {}

    /** By subject. */
    public static List<Row> all() {
        return SHOWN.stream()
                .flatMap(kind -> OwnTable.rows("/search/question-words.csv").stream()
                        .filter(row -> row.get("kind").equals(kind))
                        .map(row -> new Row(
                                Message.of("question.subject." + kind),
                                meaning(kind, row.get("value")),
                                row.get("phrases").replace("|", ", "),
                                row.get("language"),
                                row.get("source").equals("practice"))))
                .toList();
    }

    private static String meaning(String kind, String value) {
        String plain = LISTS.contains(kind) ? value.replace(" ", ", ") : value;
        return plain.replace('-', ' ').replace('_', ' ').toLowerCase(java.util.Locale.ROOT);
    }
}
