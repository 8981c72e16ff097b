package tenterbook.archive.record;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Field;
import tenterbook.archive.field.ListOf;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Value;
import tenterbook.archive.field.Written;
import tenterbook.measure.LengthUnits;
import tenterbook.words.Joined;

/**
 * One field that differs between two versions of a record.
 *
 * @param name its dotted name, as in {@code steps.1.temperature}
 * @param field its name in words, as in 'step 2, temperature'
 * @param before text in the first; empty where it had none
 * @param after text in the second; empty where it has none
 */
public record Difference(String name, Joined field, String before, String after) {
    /** What differs, in the order of the description. */
    public static <T> List<Difference> between(Part<T> part, T first, T second) {
        return between(part, part.write(first), part.write(second));
    }

    /** As {@link #between(Part, Object, Object)}, of what is stored; an empty object where there was nothing yet. */
    public static List<Difference> between(Part<?> part, ObjectNode first, ObjectNode second) {
        Map<String, String> before = texts(part, asWrittenToday(part, first));
        Map<String, String> after = texts(part, asWrittenToday(part, second));
        Set<String> names = new LinkedHashSet<>(after.keySet());
        names.addAll(before.keySet());
        List<Difference> list = new ArrayList<>();
        for (String name : names) {
            String was = before.getOrDefault(name, "");
            String is = after.getOrDefault(name, "");
            if (!was.equals(is)) {
                list.add(new Difference(name, FieldWords.path(part, name), was, is));
            }
        }
        return list;
    }

    /** As this program writes it, since older spellings of ‘not recorded’ are no difference; unchanged where unreadable. */
    private static <T> ObjectNode asWrittenToday(Part<T> part, ObjectNode stored) {
        if (stored.isEmpty()) {
            return stored;
        }
        try {
            Faults faults = new Faults();
            T record = part.read(stored, faults, "");
            return record == null || !faults.isEmpty() ? stored : part.write(record);
        } catch (IllegalArgumentException | NullPointerException e) {
            return stored;
        }
    }

    private static Map<String, String> texts(Part<?> part, ObjectNode stored) {
        Map<String, String> texts = new LinkedHashMap<>();
        put(part, stored, "", texts);
        return texts;
    }

    private static void put(Value<?> value, JsonNode json, String at, Map<String, String> texts) {
        if (value instanceof Written<?> written) {
            texts.put(at, written.textOf(json, LengthUnits.CM_AND_MM));
            if (json.has("basis")) {
                texts.put(at + ".basis", json.get("basis").textValue());
            }
        } else if (value instanceof Part<?> part) {
            for (Field<?, ?> field : part.fields()) {
                if (json.has(field.name())) {
                    put(
                            field.value(),
                            json.get(field.name()),
                            at.isEmpty() ? field.name() : at + "." + field.name(),
                            texts);
                }
            }
        } else if (value instanceof ListOf<?> list) {
            for (int i = 0; i < json.size(); i++) {
                put(list.element(), json.get(i), at + "." + i, texts);
            }
        }
    }
}
