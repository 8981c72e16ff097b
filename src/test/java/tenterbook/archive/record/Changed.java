package tenterbook.archive.record;

import com.fasterxml.jackson.databind.node.ObjectNode;
import tenterbook.archive.field.Part;

/** Records that differ from another in one stored field. */
public final class Changed {
    private Changed() {}

    public static <T> T field(Part<T> description, T record, String name, String value) {
        ObjectNode json = description.toJson(record);
        json.put(name, value);
        return description.fromJson(json);
    }
}
