package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import tenterbook.words.Message;

/** Any number of values of one kind, in order. An empty list is not stored. */
public record ListOf<E>(Value<E> element) implements Value<List<E>> {
    @Override
    public JsonNode write(List<E> list) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        list.stream().map(element::write).filter(Objects::nonNull).forEach(array::add);
        return array;
    }

    @Override
    public List<E> read(JsonNode json, Faults faults, String at) {
        if (!json.isArray()) {
            faults.add(at, Message.of("input.list", "found", Part.brief(json)));
            return null;
        }
        List<E> list = new ArrayList<>();
        for (int i = 0; i < json.size(); i++) {
            E value = element.read(json.get(i), faults, faults.inside(at, i));
            if (value != null) {
                list.add(value);
            }
        }
        return list;
    }

    @Override
    public JsonNode understood(JsonNode given, Reading reading, Faults faults, String at) {
        if (!given.isArray()) {
            faults.add(at, Message.of("input.list", "found", Part.brief(given)));
            return null;
        }
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        for (int i = 0; i < given.size(); i++) {
            String row = faults.inside(at, i);
            JsonNode understood = element.understood(given.get(i), reading, faults, row);
            if (understood != null && understood.isObject() && blank(understood) && !faults.within(row)) {
                faults.add(row, Message.of("input.empty-row"));
            } else if (understood != null) {
                array.add(understood);
            }
        }
        return array;
    }

    /** Texts of blanks alone are stored as nothing. */
    private static boolean blank(JsonNode row) {
        return row.valueStream()
                .allMatch(value -> value.isTextual() && value.textValue().isBlank());
    }

    @Override
    public ObjectNode schema() {
        ObjectNode schema = JsonNodeFactory.instance.objectNode();
        schema.put("type", "array").set("items", Schemas.reference(element));
        return schema;
    }
}
