package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.Function;

/**
 * One field of a record or of a part of one.
 *
 * @param name stored name, which never changes; also its name in forms, in the API and in message keys
 * @param value what kind of value it holds
 * @param get reads the value from the Java record
 * @param required whether a new input without it is refused; what is stored is read without it
 * @param privacy whether it is about a person or money and leaves the archive only by explicit choice
 */
public record Field<T, V>(String name, Value<V> value, Function<T, V> get, boolean required, boolean privacy) {
    Field(String name, Value<V> value, Function<T, V> get) {
        this(name, value, get, false, false);
    }

    void write(T record, ObjectNode into) {
        V held = get.apply(record);
        JsonNode json = held == null ? null : value.write(held);
        if (json != null && !(json.isContainerNode() && json.isEmpty())) {
            into.set(name, json);
        }
    }

    V read(ObjectNode stored, Faults faults, String at) {
        JsonNode json = stored.get(name);
        return json == null || json.isNull() ? null : value.read(json, faults, faults.inside(at, name));
    }
}
