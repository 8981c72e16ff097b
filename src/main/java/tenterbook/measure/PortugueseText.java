package tenterbook.measure;

import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Quantities, dates and layers as a Portuguese writes them, turned into the English words that their readers know: 'cerca de 6 a 8' becomes
 * 'about 6 to 8', '14 de março de 2024' becomes '14 march 2024'. No word of the table is one that English uses for something else here.
 */
public final class PortugueseText {
    private static final String MONTH_OR_SEASON =
            "january|february|march|april|may|june|july|august|september|october|november"
                    + "|december|spring|summer|autumn|winter";

    private static final List<Map.Entry<Pattern, String>> WORDS =
            OwnTable.rows("/tenterbook/measure/portuguese.csv").stream()
                    .map(row -> Map.entry(
                            Pattern.compile("(?U)(?<!\\w)(?:" + row.get("portuguese") + ")(?!\\w)"),
                            row.get("english")))
                    .toList();

    /** The short words, which mean this only beside a number or a month. */
    private static final List<Map.Entry<Pattern, String>> BETWEEN = List.of(
            Map.entry(Pattern.compile(" de (?=\\d{4}|" + MONTH_OR_SEASON + ")"), " "),
            Map.entry(Pattern.compile("^até (?=\\d)"), "up to "),
            Map.entry(Pattern.compile(" (?:a|até) (?=\\d|" + MONTH_OR_SEASON + ")"), " to "),
            Map.entry(Pattern.compile("(?<=\\d) e (?=\\d)"), " and "));

    private PortugueseText() {}

    /** @param plain in lower case, with single spaces */
    public static String english(String plain) {
        String english = plain;
        for (List<Map.Entry<Pattern, String>> words : List.of(WORDS, BETWEEN)) {
            for (Map.Entry<Pattern, String> word : words) {
                english = word.getKey().matcher(english).replaceAll(word.getValue());
            }
        }
        return english;
    }
}
