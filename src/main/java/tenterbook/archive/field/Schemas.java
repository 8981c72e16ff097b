package tenterbook.archive.field;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;

/** JSON Schemas of the descriptions, for OpenAPI 3.1. */
public final class Schemas {
    private Schemas() {}

    /** A part by its name, everything else as it is. */
    static ObjectNode reference(Value<?> value) {
        return value instanceof Part<?> part
                ? JsonNodeFactory.instance.objectNode().put("$ref", "#/components/schemas/" + part.name())
                : value.schema();
    }

    /** Adds the schema of a part and of every part inside it, by name. */
    public static void collect(Part<?> part, Map<String, ObjectNode> schemas) {
        if (!schemas.containsKey(part.name())) {
            schemas.put(part.name(), part.schema());
            part.fields().forEach(field -> inner(field.value(), schemas));
        }
    }

    private static void inner(Value<?> value, Map<String, ObjectNode> schemas) {
        if (value instanceof Part<?> part) {
            collect(part, schemas);
        } else if (value instanceof ListOf<?> list) {
            inner(list.element(), schemas);
        } else if (value instanceof Entered<?> entered) {
            inner(entered.stored(), schemas);
        }
    }
}
