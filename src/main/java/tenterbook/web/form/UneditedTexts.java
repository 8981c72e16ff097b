package tenterbook.web.form;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.Map;
import tenterbook.archive.field.Field;
import tenterbook.archive.field.ListOf;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Value;
import tenterbook.archive.field.Written;
import tenterbook.web.page.TypedLengths;

/** Stored values that a form shows with another text than was once entered, as '30 cm' for '30'. Where that is sent back unedited, they stay as they were. */
final class UneditedTexts {
    private static final String ENTERED = "entered";

    /** Stored values by field and shown text; a field of a row also without the number of its row, since rows move. */
    private final Map<String, JsonNode> shown = new HashMap<>();

    /** @param before the record as it was */
    UneditedTexts(Part<?> part, ObjectNode before) {
        collect(part, before, "", "");
    }

    private void collect(Part<?> part, JsonNode before, String at, String anyRow) {
        for (Field<?, ?> field : part.fields()) {
            JsonNode json = before.path(field.name());
            Value<?> value = field.value();
            if (value instanceof Written<?> written && json.has(ENTERED)) {
                String text = written.textOf(json, TypedLengths.now());
                if (!text.equals(json.get(ENTERED).textValue())) {
                    shown.put(key(at, field, text), json);
                    shown.putIfAbsent(key(anyRow, field, text), json);
                }
            } else if (value instanceof Part<?> inner) {
                collect(inner, json, at + field.name() + ".", anyRow + field.name() + ".");
            } else if (value instanceof ListOf<?> list && list.element() instanceof Part<?> row) {
                for (int i = 0; i < json.size(); i++) {
                    collect(row, json.get(i), at + field.name() + "." + i + ".", anyRow + field.name() + ".");
                }
            }
        }
    }

    private static String key(String at, Field<?, ?> field, String text) {
        return at + field.name() + "\n" + text;
    }

    /** @param typed the record as its form was read; how a value is known is chosen apart from its text and stays as chosen */
    void putBack(Part<?> part, ObjectNode typed) {
        if (!shown.isEmpty()) {
            putBack(part, typed, "", "");
        }
    }

    private void putBack(Part<?> part, ObjectNode typed, String at, String anyRow) {
        for (Field<?, ?> field : part.fields()) {
            JsonNode json = typed.path(field.name());
            Value<?> value = field.value();
            if (value instanceof Written<?> && json.has(ENTERED)) {
                String text = json.get(ENTERED).textValue();
                JsonNode was = shown.getOrDefault(key(at, field, text), shown.get(key(anyRow, field, text)));
                if (was instanceof ObjectNode stored) {
                    ObjectNode back = stored.deepCopy();
                    back.remove("basis");
                    if (json.has("basis")) {
                        back.set("basis", json.get("basis"));
                    }
                    typed.set(field.name(), back);
                }
            } else if (value instanceof Part<?> inner && json instanceof ObjectNode there) {
                putBack(inner, there, at + field.name() + ".", anyRow + field.name() + ".");
            } else if (value instanceof ListOf<?> list && list.element() instanceof Part<?> row) {
                for (int i = 0; i < json.size(); i++) {
                    if (json.get(i) instanceof ObjectNode each) {
                        putBack(row, each, at + field.name() + "." + i + ".", anyRow + field.name() + ".");
                    }
                }
            }
        }
    }
}
