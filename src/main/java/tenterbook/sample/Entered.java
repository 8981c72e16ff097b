package tenterbook.sample;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import tenterbook.measure.DateText;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;

/**
 * What somebody of the sample studio wrote down about one thing, read as the forms read it: quantities, dates and prices
 * are text. A field nobody asks for is a slip of the pen and is refused.
 */
final class Entered {
    private static final Currency EURO = Currency.getInstance("EUR");
    private final JsonNode node;
    private final Set<String> asked = new HashSet<>();

    Entered(JsonNode node) {
        this.node = node;
    }

    private JsonNode field(String name) {
        asked.add(name);
        return node.path(name);
    }

    boolean has(String name) {
        return !field(name).isMissingNode();
    }

    String text(String name) {
        return field(name).asText("");
    }

    /** Null where nothing was entered. */
    <T> T named(String name, Function<String, T> by) {
        return has(name) ? by.apply(text(name)) : null;
    }

    Quantity quantity(String name, Unit usual) {
        return QuantityText.read(text(name), usual);
    }

    PartialDate date(String name) {
        return DateText.read(text(name));
    }

    Money money(String name) {
        return Money.read(text(name), EURO);
    }

    Double number(String name) {
        return has(name) ? field(name).asDouble() : null;
    }

    /** What stands in a field as a thing of its own. */
    Entered inner(String name) {
        return new Entered(field(name));
    }

    /** Null where nobody judged. */
    Boolean judged(String name) {
        return has(name) ? field(name).asBoolean() : null;
    }

    List<String> words(String name) {
        List<String> words = new ArrayList<>();
        field(name).forEach(word -> words.add(word.asText()));
        return words;
    }

    /** Null where nothing was entered. */
    <E> E choice(String name, E[] of) {
        if (!has(name)) {
            return null;
        }
        return Arrays.stream(of)
                .filter(one -> one.toString().equals(text(name)))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("The sample's “%s” should be one of %s; found: %s"
                        .formatted(name, Arrays.toString(of), text(name))));
    }

    <T> List<T> each(String name, Function<Entered, T> read) {
        List<T> all = new ArrayList<>();
        field(name).forEach(part -> all.add(new Entered(part).read(read)));
        return all;
    }

    /** What {@code read} makes of it, having asked for every field. */
    <T> T read(Function<Entered, T> read) {
        T made = read.apply(this);
        Set<String> unread = new TreeSet<>();
        node.fieldNames().forEachRemaining(unread::add);
        unread.removeAll(asked);
        if (!unread.isEmpty()) {
            throw new IllegalStateException("The sample tells more than its records hold: "
                    + unread.stream().collect(Collectors.joining(", ")) + " in " + node);
        }
        return made;
    }
}
