package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Yes or no.
 *
 * @param onlyYes whether no and 'not recorded' are the same, so that only yes is stored
 */
public record Flag(boolean onlyYes) implements Written<Boolean> {
    /** Yes, no, or not recorded. */
    public static final Flag JUDGED = new Flag(false);

    /** Yes, or nothing said. */
    public static final Flag SAID = new Flag(true);

    @Override
    public JsonNode write(Boolean value) {
        return onlyYes && !value ? null : BooleanNode.valueOf(value);
    }

    @Override
    public Boolean read(JsonNode json, Faults faults, String at) {
        if (!json.isBoolean()) {
            faults.add(at, Message.of("input.flag", "found", Part.brief(json)));
            return null;
        }
        return json.booleanValue();
    }

    @Override
    public Boolean parse(String text, Reading reading) {
        return switch (text) {
            case "yes", "on", "1", "true" -> true;
            case "no", "0", "false" -> false;
            default -> throw Refusal.of("input.yes-or-no", "found", text);
        };
    }

    @Override
    public String text(Boolean value) {
        return value ? "yes" : "no";
    }

    @Override
    public ObjectNode schema() {
        return JsonNodeFactory.instance.objectNode().put("type", "boolean");
    }
}
