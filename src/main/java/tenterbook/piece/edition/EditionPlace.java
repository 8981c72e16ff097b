package tenterbook.piece.edition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.OwnTable;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A place in an edition or set, as read from what was typed: '2 of 9', '2/9, state II', 'artist's proof 1 of 2', 'AP I/II',
 * 'trial proof', '3 of 5 in a set', in English or Portuguese. Proofs may have Roman numerals (common practice).
 *
 * @param number from 1; null where not recorded
 * @param size how many there are of that part, from 1; null where not recorded
 * @param state of the boards, as in 'II'; empty where not recorded
 */
public record EditionPlace(
        EditionPart part,
        @Nullable Integer number,
        @Nullable Integer size,
        String state) {
    private record Named(EditionPart part, Pattern words) {}

    private static final List<Named> PARTS = OwnTable.rows("/tenterbook/piece/edition-words.csv").stream()
            .map(row -> new Named(part(row.get("part")), words(row.get("words"))))
            .toList();
    private static final Pattern STATE =
            Pattern.compile("[,;(]?\\s*\\b(?:state|estado)\\s+([ivxlc]{1,6}|\\d{1,2})(?![\\p{L}\\p{N}])\\)?");
    private static final String NUMERAL = "(\\d{1,4}|[ivxlc]{1,7})";
    private static final Pattern COUNT = Pattern.compile("(?:no|nr|nº|n°|number|número|#)?\\s*"
            + NUMERAL + "(?:\\s*(?:/|of|de|from)\\s*(?:an |a |the )?" + "(?:edition of |edição de |tiragem de )?"
            + NUMERAL + ")?");
    private static final Pattern SIZE =
            Pattern.compile("(?:(?:an )?edition|edição|tiragem)\\s*(?:of|de)?\\s*(\\d{1,4})|(?:of|de)\\s*(\\d{1,4})");

    private static EditionPart part(String code) {
        return Arrays.stream(EditionPart.values())
                .filter(part -> part.toString().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static Pattern words(String alternatives) {
        return Pattern.compile("(?<![\\p{L}\\p{N}])(?:" + alternatives + ")(?![\\p{L}\\p{N}])");
    }

    /** Empty where the text is read as no place, as 'one of a kind', or '12 of 9'; such a text is kept as it is. */
    public static Optional<EditionPlace> read(String typed) {
        String text = typed.strip()
                .toLowerCase(Locale.ROOT)
                .replace('’', '\'')
                .replaceAll("(?<=\\p{L})\\.", "")
                .replaceAll("\\s+", " ");
        String state = "";
        Matcher inState = STATE.matcher(text);
        if (inState.find()) {
            state = inState.group(1).toUpperCase(Locale.ROOT);
            text = without(text, inState);
        }
        EditionPart part = EditionPart.COPY;
        for (Named each : PARTS) {
            Matcher words = each.words.matcher(text);
            if (words.find()) {
                part = each.part;
                text = without(text, words);
                break;
            }
        }
        if (text.isEmpty()) {
            return part == EditionPart.COPY || part == EditionPart.OF_SET
                    ? Optional.empty()
                    : Optional.of(new EditionPlace(part, null, null, state));
        }
        return counted(part, text, state);
    }

    private static String without(String text, Matcher found) {
        return (text.substring(0, found.start()) + " " + text.substring(found.end()))
                .replaceAll("\\s+", " ")
                .replaceAll("^[ ,;:]+|[ ,;:]+$", "");
    }

    private static Optional<EditionPlace> counted(EditionPart part, String text, String state) {
        Matcher size = SIZE.matcher(text);
        if (size.matches()) {
            int all = Integer.parseInt(size.group(1) == null ? size.group(2) : size.group(1));
            return all == 0 ? Optional.empty() : Optional.of(new EditionPlace(part, null, all, state));
        }
        Matcher count = COUNT.matcher(text);
        if (!count.matches()) {
            return Optional.empty();
        }
        Integer number = numeral(count.group(1), part);
        Integer of = count.group(2) == null ? null : numeral(count.group(2), part);
        boolean possible = number != null && number > 0 && (count.group(2) == null || of != null && of >= number);
        return possible ? Optional.of(new EditionPlace(part, number, of, state)) : Optional.empty();
    }

    /** Null where it is none; a Roman one only of a proof. */
    private static @Nullable Integer numeral(String text, EditionPart part) {
        if (Character.isDigit(text.charAt(0))) {
            return Integer.parseInt(text);
        }
        return part.proof() ? roman(text) : null;
    }

    private static @Nullable Integer roman(String text) {
        List<Integer> values = new ArrayList<>();
        text.chars()
                .forEach(letter -> values.add(
                        switch (letter) {
                            case 'i' -> 1;
                            case 'v' -> 5;
                            case 'x' -> 10;
                            case 'l' -> 50;
                            default -> 100;
                        }));
        int sum = 0;
        for (int i = 0; i < values.size(); i++) {
            boolean before = i + 1 < values.size() && values.get(i) < values.get(i + 1);
            sum += before ? -values.get(i) : values.get(i);
        }
        return sum > 0 ? sum : null;
    }

    /** As papers state it: '2 of 9' for a numbered piece, otherwise as {@link #inWords}. */
    public Written onPapers() {
        return part == EditionPart.COPY && number != null && size != null
                ? Message.of("edition.copy", "number", number, "size", size, "stated", !state.isEmpty(), "state", state)
                : inWords();
    }

    /** How it was read, as in 'number 2 of 9, state II'. */
    public Written inWords() {
        return Message.of(
                "edition.read",
                "part",
                part,
                "copy",
                part == EditionPart.COPY,
                "numbered",
                number != null,
                "number",
                number == null ? 0 : number,
                "sized",
                size != null,
                "size",
                size == null ? 0 : size,
                "stated",
                !state.isEmpty(),
                "state",
                state);
    }
}
