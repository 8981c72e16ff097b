package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.Function;

/** A value that people write in a way of its own, and that is stored like another. */
public record Spelled<V>(Written<V> stored, Function<String, V> parser, Function<V, String> writer)
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
        return parser.apply(text);
    }

    @Override
    public String text(V value) {
        return writer.apply(value);
    }

    @Override
    public ObjectNode schema() {
        return stored.schema();
    }
}
