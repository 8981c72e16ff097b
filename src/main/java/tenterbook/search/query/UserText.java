package tenterbook.search.query;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a person typed, taken apart: words, "phrases", and either with a minus before it. No input is wrong: a quote
 * that is never closed runs to the end, and signs that are no part of a word are ignored.
 *
 * @param parts in order
 */
public record UserText(List<Term> parts) {
    public static final UserText NONE = new UserText(List.of());

    /** More than this many parts are no search but a text. */
    public static final int MOST_PARTS = 32;

    /**
     * @param words as the index has them; at least one
     * @param phrase whether it was quoted
     * @param without whether it must not be found
     * @param unfinished whether it is the last word and may go on
     */
    public record Term(List<String> words, boolean phrase, boolean without, boolean unfinished) {}

    /** At most the first {@link #MOST_PARTS} of them. */
    public static UserText read(String typed) {
        List<Term> parts = parts(typed, MOST_PARTS + 1);
        return new UserText(List.copyOf(parts.subList(0, Math.min(parts.size(), MOST_PARTS))));
    }

    /** The first part that {@link #read} leaves out as one too many. */
    public static Optional<Term> beyond(String typed) {
        return parts(typed, MOST_PARTS + 1).stream().skip(MOST_PARTS).findFirst();
    }

    private static List<Term> parts(String typed, int most) {
        String plain = Normalizer.normalize(typed, Normalizer.Form.NFKC)
                .replaceAll("[“”„«»″]", "\"")
                .replaceAll("(?<!\\S)[−–—‐]", "-");
        List<Term> parts = new ArrayList<>();
        int at = 0;
        while (at < plain.length() && parts.size() < most) {
            if (Character.isWhitespace(plain.charAt(at))) {
                at++;
                continue;
            }
            boolean without = plain.charAt(at) == '-' && at + 1 < plain.length();
            int from = without ? at + 1 : at;
            boolean phrase = plain.charAt(from) == '"';
            int end;
            if (phrase) {
                from++;
                int close = plain.indexOf('"', from);
                end = close < 0 ? plain.length() : close;
                at = end + 1;
            } else {
                end = from;
                while (end < plain.length() && !Character.isWhitespace(plain.charAt(end)) && plain.charAt(end) != '"') {
                    end++;
                }
                at = Math.max(end, from + 1);
            }
            List<String> words = TextAnalysis.FOR_QUERY.tokens(plain.substring(from, end)).stream()
                    .map(TextAnalysis.Token::word)
                    .toList();
            if (!words.isEmpty()) {
                boolean last = end == plain.length() && !phrase && !without;
                parts.add(new Term(words, phrase, without, last));
            }
        }
        return parts;
    }

    public boolean empty() {
        return parts.isEmpty();
    }
}
