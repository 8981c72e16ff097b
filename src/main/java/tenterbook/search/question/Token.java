package tenterbook.search.question;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.search.query.FacetValues;

/**
 * A word, a number, a sign or a quoted phrase of what was typed.
 *
 * @param text without case and accents; of a quoted phrase what stands between the quotes
 * @param start of it in what was typed
 * @param end after its last character
 * @param glued whether nothing stands between it and the token before
 */
record Token(Kind kind, String text, int start, int end, boolean glued) {
    enum Kind {
        WORD,
        NUMBER,
        SIGN,
        QUOTED
    }

    private static final Pattern TOKEN = Pattern.compile("(?<quoted>[\"“”„«»][^\"“”„«»]*[\"“”„«»]?)"
            + "|(?<number>\\d+(?:[.,]\\d+)*[½¼¾]?)"
            + "|(?<word>[\\p{L}\\p{M}]+(?:['’][\\p{L}\\p{M}]+)*)"
            + "|(?<sign>\\.\\.|[€$£¥%+<>≤≥~/×′″°º–—−-])");

    static List<Token> of(String typed) {
        List<Token> tokens = new ArrayList<>();
        Matcher next = TOKEN.matcher(typed);
        int end = -1;
        while (next.find()) {
            Kind kind = next.group("quoted") != null
                    ? Kind.QUOTED
                    : next.group("number") != null ? Kind.NUMBER : next.group("word") != null ? Kind.WORD : Kind.SIGN;
            String text = kind == Kind.QUOTED
                    ? next.group().replaceAll("[\"“”„«»]", "")
                    : folded(next.group().replaceAll("[–—−]", "-"));
            tokens.add(new Token(kind, text, next.start(), next.end(), next.start() == end));
            end = next.end();
        }
        return tokens;
    }

    /** A fraction behind a number stays one sign: folded, '2½' would read as 21 halves. */
    private static String folded(String text) {
        char last = text.charAt(text.length() - 1);
        return text.length() > 1 && "½¼¾".indexOf(last) >= 0
                ? FacetValues.folded(text.substring(0, text.length() - 1)) + last
                : FacetValues.folded(text);
    }

    boolean is(String... words) {
        return kind != Kind.QUOTED && List.of(words).contains(text);
    }

    boolean word() {
        return kind == Kind.WORD;
    }

    boolean number() {
        return kind == Kind.NUMBER;
    }
}
