package tenterbook.search.question;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import tenterbook.measure.OwnTable;
import tenterbook.search.query.Stems;

/** The words by which people ask for facts: the table {@code search/question-words.csv}, which says where each is from. */
final class WordTable {
    /** No phrase of the table or of a facet is looked for over more tokens. */
    static final int LONGEST = 6;

    /** Kinds whose words are found in other forms too, as 'leaks' beside 'leak'. */
    private static final Set<String> INFLECTED = Set.of("category", "fibre", "dye", "mordant", "fault");

    private static final Pattern WITHOUT_BLANKS = Pattern.compile("[\\p{IsHan}\\p{IsHiragana}\\p{IsKatakana}]");

    /** Kinds whose words are taken for a misspelt one. */
    private static final List<String> CORRECTED = List.of(
            "status",
            "unstatus",
            "category",
            "fibre",
            "dye",
            "mordant",
            "fault",
            "any",
            "made",
            "tag",
            "event",
            "hue",
            "measure",
            "order",
            "number",
            "examined",
            "square");

    static final WordTable SHIPPED = new WordTable();

    private final Map<String, Map<String, String>> values = new HashMap<>();
    private final Set<String> phrasesWithoutBlanks = new HashSet<>();

    /**
     * A phrase found.
     *
     * @param end the first token after it
     */
    record Found(String value, int end) {}

    private WordTable() {
        for (CSVRecord row : OwnTable.rows("/search/question-words.csv")) {
            Map<String, String> kind = values.computeIfAbsent(row.get("kind"), of -> new HashMap<>());
            for (String phrase : row.get("phrases").split("\\|")) {
                String key = key(Token.of(phrase));
                kind.putIfAbsent(key, row.get("value"));
                if (WITHOUT_BLANKS.matcher(key).find()) {
                    phrasesWithoutBlanks.add(key);
                }
                if (INFLECTED.contains(row.get("kind"))) {
                    Stems.of(phrase).forEach(stem -> kind.putIfAbsent(stem, row.get("value")));
                }
            }
        }
    }

    /** What was typed as tokens; Japanese and Chinese, which no blanks divide, by the longest words of the table. */
    List<Token> tokens(String typed) {
        List<Token> tokens = new ArrayList<>();
        for (Token token : Token.of(typed)) {
            if (token.word() && WITHOUT_BLANKS.matcher(token.text()).find()) {
                cut(token, tokens);
            } else {
                tokens.add(token);
            }
        }
        return tokens;
    }

    private void cut(Token token, List<Token> into) {
        String text = token.text();
        int begun = 0;
        int at = 0;
        while (at < text.length()) {
            int end = text.length();
            while (end > at && !phrasesWithoutBlanks.contains(text.substring(at, end))) {
                end--;
            }
            if (end == at) {
                at++;
                continue;
            }
            add(token, begun, at, into);
            add(token, at, end, into);
            begun = end;
            at = end;
        }
        add(token, begun, text.length(), into);
    }

    private static void add(Token token, int from, int to, List<Token> into) {
        // Folding may change how long a text is; then its ends are those of the whole.
        boolean same = token.text().length() == token.end() - token.start();
        if (to > from) {
            into.add(new Token(
                    token.kind(),
                    token.text().substring(from, to),
                    same ? token.start() + from : token.start(),
                    same ? token.start() + to : token.end(),
                    from > 0 || token.glued()));
        }
    }

    /** Tokens as one text, hyphens left out; empty for a quoted one, and where a minus stands before a word. */
    static String key(List<Token> tokens) {
        StringBuilder key = new StringBuilder();
        for (int i = 0; i < tokens.size(); i++) {
            Token token = tokens.get(i);
            if (token.is("-")) {
                if (!token.glued() || i == tokens.size() - 1) {
                    return "";
                }
            } else if (token.kind() == Token.Kind.QUOTED) {
                return "";
            } else {
                key.append(key.isEmpty() ? "" : " ").append(token.text().replace("’", "'"));
            }
        }
        return key.toString();
    }

    /** The longest phrase of a kind that begins at a token; null where none does. */
    Found longest(String kind, List<Token> tokens, int from) {
        for (int end = Math.min(tokens.size(), from + LONGEST); end > from; end--) {
            String value = value(kind, tokens.subList(from, end));
            if (value != null) {
                return new Found(value, end);
            }
        }
        return null;
    }

    /** What exactly these tokens mean as a kind; null where they mean nothing. */
    String value(String kind, List<Token> tokens) {
        Map<String, String> of = values.getOrDefault(kind, Map.of());
        String key = key(tokens);
        String value = of.get(key);
        if (value == null && tokens.size() == 1 && INFLECTED.contains(kind)) {
            for (String stem : Stems.of(key)) {
                value = value == null ? of.get(stem) : value;
            }
        }
        return value;
    }

    boolean has(String kind, Token token) {
        return values.getOrDefault(kind, Map.of()).containsKey(key(List.of(token)));
    }

    /** Words that by themselves mean a fact or belong to a quantity. */
    Set<String> singleWords() {
        Set<String> single = new HashSet<>();
        for (String kind : CORRECTED) {
            values.getOrDefault(kind, Map.of()).keySet().stream()
                    .filter(phrase -> phrase.chars().allMatch(sign -> sign >= 'a' && sign <= 'z'))
                    .forEach(single::add);
        }
        return single;
    }

    /** Words of a value, as in 'deep dark'. */
    static Set<String> words(String value) {
        return new HashSet<>(List.of(value.split(" ")));
    }
}
