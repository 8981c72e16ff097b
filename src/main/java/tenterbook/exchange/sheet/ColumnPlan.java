package tenterbook.exchange.sheet;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.words.Refusal;

/**
 * Which columns of a sheet are brought in, and how their cells are read.
 *
 * @param columns those that are brought in
 */
public record ColumnPlan(List<Chosen> columns) {
    /** How '05/03/2024' is read. */
    public enum DayOrder {
        /** As two readings, so that it is refused. */
        NOT_SAID,
        DAY_FIRST,
        MONTH_FIRST
    }

    /**
     * One column.
     *
     * @param at from 0
     * @param path of the field
     * @param unit of bare numbers; empty for the field's usual one
     * @param sameAsAbove whether an empty cell means what the cell above it has, as in merged cells
     */
    public record Chosen(int at, String path, String unit, DayOrder order, boolean sameAsAbove) {}

    public ColumnPlan {
        columns = List.copyOf(columns);
    }

    /** @throws Refusal where two columns are one field, or none says which record a row is of */
    void check(SheetKind kind) {
        Set<String> taken = new HashSet<>();
        for (Chosen chosen : columns) {
            SheetColumn column = kind.column(chosen.path())
                    .orElseThrow(() -> Refusal.of("import.no-such-field", "field", chosen.path()));
            if (!taken.add(chosen.path())) {
                throw Refusal.of("import.field-twice", "field", column.label());
            }
        }
        if (!taken.contains(kind.identifying()) && !taken.contains(kind.naming())) {
            throw Refusal.of(
                    "import.no-identifying-column",
                    "field",
                    kind.column(kind.identifying()).orElseThrow().label());
        }
    }

    public String toJson() {
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        for (Chosen chosen : columns) {
            all.addObject()
                    .put("at", chosen.at())
                    .put("path", chosen.path())
                    .put("unit", chosen.unit())
                    .put("order", chosen.order().name())
                    .put("sameAsAbove", chosen.sameAsAbove());
        }
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        json.set("columns", all);
        return json.toString();
    }

    /** @throws IllegalArgumentException where the text is no plan */
    public static ColumnPlan fromJson(String text) {
        List<Chosen> columns = new ArrayList<>();
        for (JsonNode each : RecordCodec.parsed(text).path("columns")) {
            columns.add(new Chosen(
                    each.path("at").asInt(),
                    each.path("path").asText(),
                    each.path("unit").asText(),
                    DayOrder.valueOf(each.path("order").asText("NOT_SAID")),
                    each.path("sameAsAbove").asBoolean()));
        }
        return new ColumnPlan(columns);
    }
}
