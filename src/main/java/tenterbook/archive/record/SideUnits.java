package tenterbook.archive.record;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Faults;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.measure.UnreadableQuantity;
import tenterbook.words.Message;

/** Asks about a length and a width of which one names a unit and the other would be read in another one, as '34 cm' beside '30' read as millimetres. */
public final class SideUnits {
    private static final String LENGTH = "length";
    private static final String WIDTH = "width";

    private SideUnits() {}

    /**
     * Of a record that was typed into a form.
     *
     * @param before the record as it was, whose pairs are not asked about again; null for a new one
     */
    public static void check(ObjectNode typed, @Nullable ObjectNode before, Faults faults) {
        Set<String> known = new HashSet<>();
        if (before != null) {
            collect(before, known);
        }
        walk(typed, typed, known, faults, "");
    }

    /**
     * Of a record that a program sent; a quantity with its parts names its unit and is not looked at.
     *
     * @param understood the same, read
     */
    public static void checkSent(ObjectNode sent, ObjectNode understood, Faults faults) {
        walk(sent, understood, Set.of(), faults, "");
    }

    private static void collect(JsonNode node, Set<String> known) {
        known.add(pair(node));
        node.forEach(inner -> collect(inner, known));
    }

    private static void walk(JsonNode given, JsonNode read, Set<String> known, Faults faults, String at) {
        String length = text(given.path(LENGTH), given == read);
        String width = text(given.path(WIDTH), given == read);
        if (!length.isEmpty() && !width.isEmpty() && !known.contains(pair(read))) {
            ask(length, width, read, LENGTH, faults, at);
            ask(width, length, read, WIDTH, faults, at);
        }
        if (given.isObject()) {
            given.properties()
                    .forEach(field -> walk(
                            field.getValue(),
                            read.path(field.getKey()),
                            known,
                            faults,
                            faults.inside(at, field.getKey())));
        } else if (given.isArray()) {
            for (int i = 0; i < given.size(); i++) {
                walk(given.get(i), read.path(i), known, faults, faults.inside(at, String.valueOf(i)));
            }
        }
    }

    private static void ask(String text, String beside, JsonNode read, String field, Faults faults, String at) {
        String other =
                read.path(field.equals(LENGTH) ? WIDTH : LENGTH).path("unit").asText();
        String mine = read.path(field).path("unit").asText();
        if (bare(text) && !bare(beside) && !mine.isEmpty() && !other.isEmpty() && !mine.equals(other)) {
            faults.add(
                    faults.inside(at, field),
                    Message.of(
                            "input.unit-beside",
                            "found",
                            text,
                            "unit",
                            StoredCodes.UNIT.choice(mine).symbol(),
                            "beside",
                            beside));
        }
    }

    /** Whether the unit is that of the field alone. */
    private static boolean bare(String text) {
        try {
            return QuantityText.read(text, Unit.METRE).unit() == Unit.METRE
                    && QuantityText.read(text, Unit.INCH).unit() == Unit.INCH;
        } catch (UnreadableQuantity e) {
            return false;
        }
    }

    private static String text(JsonNode quantity, boolean typed) {
        return quantity.isTextual()
                ? quantity.asText()
                : typed ? quantity.path("entered").asText() : "";
    }

    private static String pair(JsonNode node) {
        return node.path(LENGTH).path("entered").asText()
                + '\n'
                + node.path(WIDTH).path("entered").asText();
    }
}
