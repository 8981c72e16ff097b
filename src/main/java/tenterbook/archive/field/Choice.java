package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;

/** One of a closed choice, stored by its code. */
public record Choice<E extends Enum<E>>(Codes<E> codes) implements Written<E> {
    @Override
    public JsonNode write(E value) {
        String code = codes.code(value);
        return code == null ? null : TextNode.valueOf(code);
    }

    @Override
    public E read(JsonNode json, Faults faults, String at) {
        try {
            return codes.choice(json.isTextual() ? json.textValue() : Part.brief(json));
        } catch (IllegalArgumentException e) {
            faults.add(at, e);
            return null;
        }
    }

    @Override
    public E parse(String text, Reading reading) {
        return codes.choice(text);
    }

    @Override
    public String text(E value) {
        String code = codes.code(value);
        return code == null ? "" : code;
    }

    @Override
    public ObjectNode schema() {
        ObjectNode schema = JsonNodeFactory.instance.objectNode();
        schema.put("type", "string");
        codes.all().forEach(schema.putArray("enum")::add);
        return schema;
    }
}
