package tenterbook.piece;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.words.Refusal;

/**
 * Year and serial: a prefix, two digits of the year, a hyphen, a serial from 001, as in {@code V24-001}.
 *
 * @param prefix up to 6 letters before the year; may be empty
 */
public record NumberScheme(String prefix) {
    public NumberScheme {
        prefix = prefix == null ? "" : prefix.strip();
        if (!prefix.matches("\\p{L}{0,6}")) {
            throw Refusal.of("piece.prefix", "found", prefix);
        }
    }

    /**
     * The number after the greatest one of that year ever given.
     *
     * @param used all numbers ever given, also to withdrawn pieces, that begin with a text, whatever the case of its letters;
     *     others do no harm
     */
    public PieceNumber next(Function<String, List<String>> used, int year) {
        String start = String.format(Locale.ROOT, "%s%02d-", prefix, Math.floorMod(year, 100));
        Pattern form =
                Pattern.compile(Pattern.quote(start) + "(\\d{1,18})", Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
        long greatest = used.apply(start).stream()
                .map(form::matcher)
                .filter(Matcher::matches)
                .mapToLong(found -> Long.parseLong(found.group(1)))
                .max()
                .orElse(0);
        return new PieceNumber(String.format(Locale.ROOT, "%s%03d", start, greatest + 1));
    }
}
