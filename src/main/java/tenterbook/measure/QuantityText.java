package tenterbook.measure;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Message;

/**
 * Reads a quantity as people write it: '6-8', 'about 25 min', '1/2 yd', '1 ft 6 in', '1,5 m', 'at least 5', 'forgot'; in Portuguese too.
 *
 * <p>What cannot be read is refused with a sentence and never guessed; the caller keeps the text.
 */
public final class QuantityText {
    private static final Set<String> UNKNOWN_WORDS = Set.of(
            "forgot",
            "forgotten",
            "unknown",
            "don't know",
            "dont know",
            "do not know",
            "not known",
            "?",
            "??",
            "no idea",
            "lost",
            "not measured",
            "not written down",
            "n/a",
            "-",
            "—");
    private static final Map<String, String> FRACTIONS = Map.of(
            "½", "1/2", "¼", "1/4", "¾", "3/4", "⅓", "1/3", "⅔", "2/3", "⅛", "1/8", "⅜", "3/8", "⅝", "5/8", "⅞", "7/8");
    /** Number words; one that holds another stands before it. */
    private static final List<Map.Entry<Pattern, String>> NUMBER_WORDS = List.of(
            word("half (?:a|an)", "0.5"),
            word("a dozen", "12"),
            word("half", "0.5"),
            word("one", "1"),
            word("two", "2"),
            word("three", "3"),
            word("four", "4"),
            word("five", "5"),
            word("six", "6"),
            word("seven", "7"),
            word("eight", "8"),
            word("nine", "9"),
            word("ten", "10"),
            word("eleven", "11"),
            word("twelve", "12"));

    /** No quantity needs more; a longer text is a note that went into the wrong field. */
    private static final int LONGEST = 100;

    private static final Pattern ABOUT = Pattern.compile(
            "\\b(about|approximately|approx\\.?|circa|ca\\.?|c\\.|around|roughly|maybe|perhaps|nearly)\\s*|~|≈|(?<=\\d)\\s?-?ish\\b");
    private static final Pattern RANGE =
            Pattern.compile("^(?:between|from)?\\s*(.+?)\\s*(?:-|–|—|\\bto\\b|\\band\\b|\\bor\\b|\\.\\.+)\\s*(.+)$");

    /** From the surest to the least sure. */
    private static final List<Map.Entry<String, Basis>> BASIS_WORDS = List.of(
            Map.entry("measured", Basis.MEASURED),
            Map.entry("weighed", Basis.MEASURED),
            Map.entry("counted", Basis.MEASURED),
            Map.entry("timed", Basis.MEASURED),
            Map.entry("from memory", Basis.REMEMBERED),
            Map.entry("remembered", Basis.REMEMBERED),
            Map.entry("i think", Basis.REMEMBERED),
            Map.entry("estimated", Basis.ESTIMATED),
            Map.entry("guessed", Basis.ESTIMATED));

    private QuantityText() {}

    private static Map.Entry<Pattern, String> word(String words, String number) {
        return Map.entry(Pattern.compile("\\b" + words + "\\b"), number);
    }

    /**
     * Reads {@code text}; where it names no unit, {@code usual} is meant.
     *
     * @return {@link Quantity#UNRECORDED} for null or blank text
     * @throws UnreadableQuantity with a sentence for the person who typed it
     */
    public static Quantity read(@Nullable String text, Unit usual) {
        if (text == null || text.isBlank()) {
            return Quantity.UNRECORDED;
        }
        if (text.strip().length() > LONGEST) {
            throw new UnreadableQuantity(
                    text.strip().substring(0, LONGEST) + "…",
                    usual,
                    Message.of("measure.quantity.too-long", "most", LONGEST));
        }
        String plain = simplify(text);
        if (usual == Unit.RATIO) {
            // Dyers write 30:1 and 1:30 for the same bath; nobody dyes in less water than cloth.
            plain = plain.replaceAll("\\b1\\s*:\\s*(?=\\d+(?:[.,]\\d+)?\\b)(?!1\\b)", "")
                    .replaceAll("\\s*:\\s*1\\b| to 1$", "");
        }
        if (UNKNOWN_WORDS.contains(plain)) {
            return new Quantity(text.strip(), null, null, null, Basis.UNKNOWN, false);
        }
        Basis basis = Basis.UNKNOWN;
        for (var word : BASIS_WORDS) {
            if (plain.contains(word.getKey())) {
                // The least sure word wins: 'measured, I think' is remembered.
                basis = word.getValue();
                plain = plain.replace(word.getKey(), " ").strip();
            }
        }
        boolean about = ABOUT.matcher(plain).find() || plain.endsWith("ish") || plain.endsWith(" or so");
        plain = ABOUT.matcher(plain)
                .replaceAll("")
                .replaceAll("(ish| or so)$", "")
                .replaceAll("^[\\s,;]+|[\\s(,;]+$|\\(\\s*\\)", "");
        Ends ends = ends(text, plain, usual);
        Unit unit = ends.unit;
        Double low = ends.low;
        Double high = ends.high;
        if (low != null && high != null && low > high) {
            throw new UnreadableQuantity(text, usual, Message.of("measure.quantity.backwards"));
        }
        if (mustNotBeNegative(unit) && (low != null && low < 0 || high != null && high < 0)) {
            throw new UnreadableQuantity(text, usual, Message.of("measure.quantity.negative"));
        }
        if (basis == Basis.UNKNOWN && (about || low == null || high == null || !low.equals(high))) {
            basis = Basis.ESTIMATED;
        }
        return new Quantity(text.strip(), low, high, unit, basis, about);
    }

    private static boolean mustNotBeNegative(Unit unit) {
        return unit.dimension() != Dimension.TEMPERATURE;
    }

    private static String simplify(String text) {
        String plain = PortugueseText.english(text.toLowerCase(Locale.ROOT)
                        .replaceAll("[\\s\\p{Z}]+", " ")
                        .strip())
                .replace('\u2212', '-');
        for (var fraction : FRACTIONS.entrySet()) {
            plain = plain.replace(fraction.getKey(), " " + fraction.getValue());
        }
        for (var word : NUMBER_WORDS) {
            plain = word.getKey().matcher(plain).replaceAll(word.getValue());
        }
        return plain.replace("overnight", "1 night").replaceAll("\\s+", " ").strip();
    }

    private record Ends(@Nullable Double low, @Nullable Double high, Unit unit) {}

    private static Ends ends(String text, String plain, Unit usual) {
        Matcher least = Pattern.compile("^(?:at least|over|more than|min\\.?|>=?|≥)\\s*(.+)$")
                .matcher(plain);
        if (least.matches()) {
            Amount one = Amount.read(text, least.group(1), usual);
            return new Ends(one.value(), null, one.unit());
        }
        Matcher most = Pattern.compile("^(?:at most|up to|under|less than|max\\.?|<=?|≤)\\s*(.+)$")
                .matcher(plain);
        if (most.matches()) {
            Amount one = Amount.read(text, most.group(1), usual);
            return new Ends(null, one.value(), one.unit());
        }
        Matcher open = Pattern.compile("^(.+?)\\s*\\+$").matcher(plain);
        if (open.matches()) {
            Amount one = Amount.read(text, open.group(1), usual);
            return new Ends(one.value(), null, one.unit());
        }
        Matcher range = RANGE.matcher(plain);
        if (range.matches() && !range.group(1).isBlank()) {
            Amount high = Amount.read(text, range.group(2), usual);
            Amount low = Amount.read(text, range.group(1), high.unit());
            if (!high.hasUnit() && low.hasUnit()) {
                // '6 in to 8' means inches at both ends.
                high = Amount.read(text, range.group(2), low.unit());
            }
            return new Ends(low.unit().convert(low.value(), high.unit()), high.value(), high.unit());
        }
        Amount one = Amount.read(text, plain, usual);
        return new Ends(one.value(), one.value(), one.unit());
    }
}
