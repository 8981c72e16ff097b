package tenterbook.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a quantity as people write it: '6-8', 'about 40 min', '1/2 yd', '1 ft 6 in', '1,5 m', 'at least 5', 'forgot'.
 *
 * <p>What cannot be read is refused with a sentence and never guessed; the caller keeps the text.
 */
public final class QuantityText {
    private static final Set<String> SAID_UNKNOWN = Set.of(
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
    private static final Map<String, String> FRACTIONS =
            Map.of("½", "1/2", "¼", "1/4", "¾", "3/4", "⅓", "1/3", "⅔", "2/3", "⅛", "1/8", "⅜", "3/8", "⅝", "5/8");
    private static final Map<String, Double> NUMBER_WORDS = Map.ofEntries(
            Map.entry("one", 1.0),
            Map.entry("two", 2.0),
            Map.entry("three", 3.0),
            Map.entry("four", 4.0),
            Map.entry("five", 5.0),
            Map.entry("six", 6.0),
            Map.entry("seven", 7.0),
            Map.entry("eight", 8.0),
            Map.entry("nine", 9.0),
            Map.entry("ten", 10.0),
            Map.entry("eleven", 11.0),
            Map.entry("twelve", 12.0),
            Map.entry("half a", 0.5),
            Map.entry("half", 0.5),
            Map.entry("a dozen", 12.0));
    private static final Pattern ABOUT = Pattern.compile(
            "\\b(about|approximately|approx\\.?|circa|ca\\.?|c\\.|around|roughly|maybe|perhaps|nearly)\\s*|~|≈");
    private static final Pattern NUMBER = Pattern.compile(
            "(?<mixed>\\d+\\s+\\d+\\s*/\\s*\\d+)|(?<fraction>\\d+\\s*/\\s*\\d+)|(?<decimal>-?\\d+(?:[.,]\\d+)*)");
    private static final Pattern RANGE =
            Pattern.compile("^(?:between|from)?\\s*(.+?)\\s*(?:-|–|—|\\bto\\b|\\band\\b|\\bor\\b|\\.\\.+)\\s*(.+)$");

    private QuantityText() {}

    /**
     * Reads {@code text}; where it names no unit, {@code usual} is meant.
     *
     * @return {@link Quantity#UNRECORDED} for null or blank text
     * @throws UnreadableQuantity with a sentence for the person who typed it
     */
    public static Quantity read(String text, Unit usual) {
        if (text == null || text.isBlank()) {
            return Quantity.UNRECORDED;
        }
        String plain = simplify(text);
        if (usual == Unit.RATIO) {
            plain = plain.replaceAll("\\s*:\\s*1\\b| to 1$", "");
        }
        if (SAID_UNKNOWN.contains(plain)) {
            return new Quantity(text.strip(), null, null, null, Basis.UNKNOWN, false);
        }
        Basis basis = Basis.UNKNOWN;
        for (var word : BASIS_WORDS.entrySet()) {
            if (plain.contains(word.getKey())) {
                basis = word.getValue();
                plain = plain.replace(word.getKey(), " ").strip();
            }
        }
        boolean about = ABOUT.matcher(plain).find() || plain.endsWith("ish") || plain.endsWith(" or so");
        plain = ABOUT.matcher(plain)
                .replaceAll("")
                .replaceAll("(ish| or so)$", "")
                .replaceAll("[\\s(,;]+$|\\(\\s*\\)", "");
        double[] ends = ends(text, plain, usual);
        Unit unit = ends.length > 2 ? Unit.values()[(int) ends[2]] : usual;
        Double low = Double.isNaN(ends[0]) ? null : ends[0];
        Double high = Double.isNaN(ends[1]) ? null : ends[1];
        if (low != null && high != null && low > high) {
            throw new UnreadableQuantity(text, usual, "the range runs backwards; write the smaller number first");
        }
        if (mustNotBeNegative(unit) && (low != null && low < 0 || high != null && high < 0)) {
            throw new UnreadableQuantity(text, usual, "this cannot be less than nothing");
        }
        if (basis == Basis.UNKNOWN && (about || low == null || high == null || !low.equals(high))) {
            basis = Basis.ESTIMATED;
        }
        return new Quantity(text.strip(), low, high, unit, basis, about);
    }

    private static final Map<String, Basis> BASIS_WORDS = Map.of(
            "measured",
            Basis.MEASURED,
            "weighed",
            Basis.MEASURED,
            "counted",
            Basis.MEASURED,
            "timed",
            Basis.MEASURED,
            "from memory",
            Basis.REMEMBERED,
            "remembered",
            Basis.REMEMBERED,
            "i think",
            Basis.REMEMBERED,
            "estimated",
            Basis.ESTIMATED,
            "guessed",
            Basis.ESTIMATED);

    private static boolean mustNotBeNegative(Unit unit) {
        return unit.dimension() != Dimension.TEMPERATURE;
    }

    private static String simplify(String text) {
        String plain =
                text.strip().toLowerCase(Locale.ROOT).replace('\u00a0', ' ').replace('\u2212', '-');
        for (var fraction : FRACTIONS.entrySet()) {
            plain = plain.replace(fraction.getKey(), " " + fraction.getValue());
        }
        for (var word : NUMBER_WORDS.entrySet()) {
            plain = plain.replaceAll("\\b" + word.getKey() + "\\b", QuantityWords.number(word.getValue()));
        }
        return plain.replace("overnight", "1 night").replaceAll("\\s+", " ").strip();
    }

    private static double[] ends(String text, String plain, Unit usual) {
        Matcher least = Pattern.compile("^(?:at least|over|more than|min\\.?|>=?|≥)\\s*(.+)$")
                .matcher(plain);
        if (least.matches()) {
            Read one = one(text, least.group(1), usual);
            return new double[] {one.value, Double.NaN, one.unit.ordinal()};
        }
        Matcher most = Pattern.compile("^(?:at most|up to|under|less than|max\\.?|<=?|≤)\\s*(.+)$")
                .matcher(plain);
        if (most.matches()) {
            Read one = one(text, most.group(1), usual);
            return new double[] {Double.NaN, one.value, one.unit.ordinal()};
        }
        Matcher open = Pattern.compile("^(.+?)\\s*\\+$").matcher(plain);
        if (open.matches()) {
            Read one = one(text, open.group(1), usual);
            return new double[] {one.value, Double.NaN, one.unit.ordinal()};
        }
        Matcher range = RANGE.matcher(plain);
        if (range.matches() && !range.group(1).isBlank()) {
            Read high = one(text, range.group(2), usual);
            Read low = one(text, range.group(1), high.unit);
            return new double[] {low.unit.convert(low.value, high.unit), high.value, high.unit.ordinal()};
        }
        Read one = one(text, plain, usual);
        return new double[] {one.value, one.value, one.unit.ordinal()};
    }

    private record Read(double value, Unit unit) {}

    private static Read one(String text, String part, Unit usual) {
        String rest = part.strip();
        if (usual == Unit.PH) {
            rest = rest.replaceFirst("^ph\\s*", "");
        }
        List<Read> terms = new ArrayList<>();
        while (!rest.isBlank()) {
            Matcher number = NUMBER.matcher(rest);
            if (!number.lookingAt()) {
                throw new UnreadableQuantity(text, usual, "'" + rest.strip() + "' is not a number");
            }
            double value = value(text, number, usual);
            rest = rest.substring(number.end());
            Matcher next = Pattern.compile("\\s?\\d").matcher(rest);
            String written = next.find() ? rest.substring(0, next.start()) : rest;
            rest = rest.substring(written.length()).strip();
            written = written.strip().replaceAll("[.,]$", "").strip();
            Unit unit = written.isEmpty() ? usual : unit(text, written, usual);
            terms.add(new Read(value, unit));
        }
        if (terms.isEmpty()) {
            throw new UnreadableQuantity(text, usual, "there is no number in it");
        }
        Unit first = terms.get(0).unit;
        if (terms.size() > 1 && (terms.stream().map(Read::unit).distinct().count() < terms.size())) {
            throw new UnreadableQuantity(text, usual, "it holds several numbers; write a range as '6 to 8'");
        }
        double sum =
                terms.stream().mapToDouble(t -> t.unit.convert(t.value, first)).sum();
        return new Read(sum, first);
    }

    private static Unit unit(String text, String written, Unit usual) {
        return Unit.written(written, usual.dimension()).orElseThrow(() -> {
            String known = usual.dimension() == Dimension.COUNT ? "a plain number" : "a unit like " + usual.symbol();
            return new UnreadableQuantity(text, usual, "'" + written + "' is not " + known);
        });
    }

    private static double value(String text, Matcher number, Unit usual) {
        if (number.group("mixed") != null) {
            String[] parts = number.group("mixed").split("\\s+", 2);
            return Double.parseDouble(parts[0]) + fraction(text, parts[1], usual);
        }
        if (number.group("fraction") != null) {
            return fraction(text, number.group("fraction"), usual);
        }
        String digits = number.group("decimal");
        if (digits.matches("-?\\d{1,3}(,\\d{3})+(\\.\\d+)?") && !digits.startsWith("0,")) {
            if (digits.indexOf(',') == digits.lastIndexOf(',') && !digits.contains(".")) {
                throw new UnreadableQuantity(
                        text,
                        usual,
                        "'%s' can be read as %s or as %s; write it without the comma"
                                .formatted(digits, digits.replace(",", ""), digits.replace(',', '.')));
            }
            return Double.parseDouble(digits.replace(",", ""));
        }
        String point = digits.replace(',', '.');
        if (point.indexOf('.') != point.lastIndexOf('.')) {
            throw new UnreadableQuantity(text, usual, "'" + digits + "' has more than one decimal mark");
        }
        return Double.parseDouble(point);
    }

    private static double fraction(String text, String fraction, Unit usual) {
        String[] parts = fraction.split("/");
        double below = Double.parseDouble(parts[1].strip());
        if (below == 0) {
            throw new UnreadableQuantity(text, usual, "'" + fraction + "' divides by nothing");
        }
        return Double.parseDouble(parts[0].strip()) / below;
    }
}
