package tenterbook.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.words.Message;

/**
 * One number with its unit in the text of a quantity, as in '1/2 yd', or several added up, as in '1 ft 6 in'.
 *
 * @param hasUnit whether the text has a unit; otherwise it is the usual one
 */
record Amount(double value, Unit unit, boolean hasUnit) {
    private static final Pattern NEXT_NUMBER = Pattern.compile("(?!(?<=m|yd)2(?!\\d))\\d");
    private static final Pattern NUMBER = Pattern.compile(
            "(?<mixed>\\d+\\s+\\d+\\s*/\\s*\\d+)|(?<fraction>\\d+\\s*/\\s*\\d+)|(?<decimal>-?\\d+(?:[.,]\\d+)*)");

    /**
     * @param text the whole text, for messages
     * @param part the number or numbers with units
     */
    static Amount read(String text, String part, Unit usual) {
        String rest = part.strip();
        if (usual == Unit.PH) {
            rest = rest.replaceFirst("^ph\\s*", "");
        }
        List<Amount> terms = new ArrayList<>();
        while (!rest.isBlank()) {
            Matcher number = NUMBER.matcher(rest);
            if (!number.lookingAt()) {
                throw new UnreadableQuantity(
                        text, usual, Message.of("measure.quantity.no-number-here", "found", rest.strip()));
            }
            double value = value(text, number, usual);
            if (!Double.isFinite(value)) {
                throw new UnreadableQuantity(text, usual, Message.of("measure.quantity.too-large"));
            }
            rest = rest.substring(number.end());
            // The 2 of m2 and yd2 belongs to the unit; any other digit begins a new number.
            Matcher next = NEXT_NUMBER.matcher(rest);
            String written = next.find() ? rest.substring(0, next.start()) : rest;
            rest = rest.substring(written.length()).strip();
            written = written.strip().replaceAll("[.,]$", "").strip();
            terms.add(new Amount(value, written.isEmpty() ? usual : unit(text, written, usual), !written.isEmpty()));
        }
        if (terms.isEmpty()) {
            throw new UnreadableQuantity(text, usual, Message.of("measure.quantity.no-number"));
        }
        return terms.size() == 1 ? terms.get(0) : together(text, terms, usual);
    }

    /** '1 ft 6 in': every number with its unit, each smaller than the one before. */
    private static Amount together(String text, List<Amount> terms, Unit usual) {
        Unit first = terms.get(0).unit;
        double sum = 0;
        for (int i = 0; i < terms.size(); i++) {
            Amount term = terms.get(i);
            if (!term.hasUnit || i > 0 && !(term.unit.convert(1, terms.get(i - 1).unit) < 1)) {
                throw new UnreadableQuantity(text, usual, Message.of("measure.quantity.several-numbers"));
            }
            sum += term.unit.convert(term.value, first);
        }
        return new Amount(sum, first, true);
    }

    private static Unit unit(String text, String written, Unit usual) {
        if (usual.dimension() == Dimension.TEMPERATURE && written.matches("°|º|deg|degrees?")) {
            return usual;
        }
        return Unit.written(written, usual.dimension()).orElseThrow(() -> {
            Message why = usual.dimension() == Dimension.COUNT
                    ? Message.of("measure.quantity.no-plain-number", "found", written)
                    : Message.of("measure.quantity.no-unit", "found", written, "unit", usual.symbol());
            return new UnreadableQuantity(text, usual, why);
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
                        Message.of(
                                "measure.quantity.two-readings",
                                "found",
                                digits,
                                "thousands",
                                digits.replace(",", ""),
                                "decimal",
                                digits.replace(',', '.')));
            }
            return Double.parseDouble(digits.replace(",", ""));
        }
        String point = digits.replace(',', '.');
        if (point.indexOf('.') != point.lastIndexOf('.')) {
            throw new UnreadableQuantity(text, usual, Message.of("measure.quantity.decimal-marks", "found", digits));
        }
        return Double.parseDouble(point);
    }

    private static double fraction(String text, String fraction, Unit usual) {
        String[] parts = fraction.split("/");
        double below = Double.parseDouble(parts[1].strip());
        if (below == 0) {
            throw new UnreadableQuantity(
                    text, usual, Message.of("measure.quantity.divides-by-nothing", "found", fraction));
        }
        return Double.parseDouble(parts[0].strip()) / below;
    }
}
