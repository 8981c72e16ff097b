package tenterbook.exchange.sheet;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Written;
import tenterbook.measure.LengthUnits;

/** The cells of a record: its fields as texts, by dotted name. */
final class RecordCells {
    private RecordCells() {}

    /** The text of a field as a form has it; empty where nothing is recorded. */
    static String text(SheetColumn column, JsonNode record) {
        JsonNode json = at(record, column.path());
        return json == null ? "" : text(column.value(), json);
    }

    private static <V> String text(Written<V> value, JsonNode json) {
        V read = value.read(json, new Faults(), "");
        return read == null ? "" : value.text(read, LengthUnits.CM_AND_MM);
    }

    static @Nullable JsonNode at(JsonNode record, String path) {
        JsonNode json = record;
        for (String name : path.split("\\.")) {
            json = json == null ? null : json.isArray() ? json.get(Integer.parseInt(name)) : json.get(name);
        }
        return json == null || json.isNull() ? null : json;
    }

    static void put(ObjectNode record, String path, JsonNode value) {
        String[] names = path.split("\\.");
        if (names.length == 1) {
            record.set(path, value);
            return;
        }
        ArrayNode rows = record.withArray("/" + names[0]);
        int row = Integer.parseInt(names[1]);
        while (rows.size() <= row) {
            rows.addObject();
        }
        ((ObjectNode) rows.get(row)).set(names[2], value);
    }

    /** Takes rows without anything in them away, as where only the third of three was filled. */
    static void withoutEmptyRows(ObjectNode record) {
        for (JsonNode each : record) {
            if (each instanceof ArrayNode rows) {
                for (int i = rows.size() - 1; i >= 0; i--) {
                    if (rows.get(i).isObject() && rows.get(i).isEmpty()) {
                        rows.remove(i);
                    }
                }
            }
        }
    }

    /** Whether a cell has what is recorded already; line ends are as the sheet's form has them. */
    static boolean same(String recorded, String cell) {
        return plain(recorded).equals(plain(cell));
    }

    private static String plain(String text) {
        return text.replace("\r\n", "\n").replace('\r', '\n').strip();
    }
}
