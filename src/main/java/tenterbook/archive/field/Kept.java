package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import tenterbook.words.Message;

/** A JSON object that is kept member for member as it is, because a room above describes what stands in it. */
public record Kept() implements Value<ObjectNode> {
    public static final Kept OBJECT = new Kept();

    @Override
    public JsonNode write(ObjectNode value) {
        return value;
    }

    @Override
    public ObjectNode read(JsonNode json, Faults faults, String at) {
        if (json instanceof ObjectNode object) {
            return object;
        }
        faults.add(at, Message.of("input.object", "found", Part.brief(json)));
        return null;
    }

    @Override
    public JsonNode understood(JsonNode given, Reading reading, Faults faults, String at) {
        return read(given, faults, at);
    }

    @Override
    public ObjectNode schema() {
        return JsonNodeFactory.instance.objectNode().put("type", "object");
    }
}
