package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.BiFunction;
import tenterbook.measure.LengthUnits;

/**
 * A value that a person writes in one line of a form of its own, and that is stored as another kind of value: a quantity, a date or a
 * price with what was understood of it, a grade as a number.
 *
 * @param stored how it is stored
 * @param parser reads a line of text, which is not blank; refuses with an {@link IllegalArgumentException}
 * @param writer the line of text, where lengths typed without a unit are read in the given ones; empty where nothing is recorded
 */
public record Entered<V>(
        Value<V> stored, BiFunction<String, Reading, V> parser, BiFunction<V, LengthUnits, String> writer)
        implements Written<V> {
    @Override
    public JsonNode write(V value) {
        return stored.write(value);
    }

    @Override
    public V read(JsonNode json, Faults faults, String at) {
        return stored.read(json, faults, at);
    }

    @Override
    public JsonNode understood(JsonNode given, Reading reading, Faults faults, String at) {
        return given.isTextual()
                ? fromText(given.textValue(), reading, faults, at)
                : stored.understood(given, reading, faults, at);
    }

    @Override
    public V parse(String text, Reading reading) {
        return parser.apply(text, reading);
    }

    @Override
    public String text(V value) {
        return text(value, LengthUnits.CM_AND_MM);
    }

    @Override
    public String text(V value, LengthUnits lengths) {
        return writer.apply(value, lengths);
    }

    /** A part may be sent as its line of text as well. */
    @Override
    public ObjectNode schema() {
        if (!(stored instanceof Part<?> part)) {
            return stored.schema();
        }
        ObjectNode schema = JsonNodeFactory.instance.objectNode();
        schema.putArray("oneOf")
                .add(JsonNodeFactory.instance.objectNode().put("type", "string"))
                .add(Schemas.reference(part));
        return schema;
    }
}
