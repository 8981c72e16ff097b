package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;

/** Whether an answer is what the description of the API says: the part of JSON Schema that it uses. */
final class Schema {
    private Schema() {}

    /** Types, required fields and fields without a description, down the whole answer: the part of a schema used here. */
    static void fits(JsonNode description, JsonNode value, JsonNode schema, String where) {
        if (schema.has("$ref")) {
            fits(
                    description,
                    value,
                    description.at(schema.get("$ref").textValue().substring(1)),
                    where);
        } else if (schema.has("oneOf")) {
            JsonNode fitting = value.isTextual()
                    ? schema.get("oneOf").get(0)
                    : schema.get("oneOf").get(1);
            fits(description, value, fitting, where);
        } else {
            String type = schema.get("type").textValue();
            boolean right = switch (type) {
                case "object" -> value.isObject();
                case "array" -> value.isArray();
                case "string" -> value.isTextual();
                case "integer" -> value.isIntegralNumber();
                case "number" -> value.isNumber();
                case "boolean" -> value.isBoolean();
                default -> false;
            };
            assertThat(right).as("%s is a %s: %s", where, type, value).isTrue();
            if (schema.has("enum")) {
                assertThat(texts(schema.get("enum"))).as(where).contains(value.textValue());
            }
            schema.path("required")
                    .forEach(name -> assertThat(value.has(name.textValue()))
                            .as("%s has %s: %s", where, name, value)
                            .isTrue());
            if (schema.has("properties")) {
                value.properties().forEach(field -> {
                    JsonNode inner = schema.get("properties").get(field.getKey());
                    assertThat(inner)
                            .as("%s describes %s", where, field.getKey())
                            .isNotNull();
                    fits(description, field.getValue(), inner, where + "." + field.getKey());
                });
            }
            if (value.isArray()) {
                value.forEach(item -> fits(description, item, schema.get("items"), where + "[]"));
            }
        }
    }

    private static List<String> texts(JsonNode array) {
        return array.valueStream().map(JsonNode::textValue).toList();
    }
}
