package tenterbook.labelling.rule;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import tenterbook.measure.OwnTable;

/** Rows of {@code /label/rules.csv}, and how those of a market lie over those of its base. */
final class RuleRows {
    /** The law of which another market may keep a copy. */
    private static final String KEPT = "Reg. (EU) 1007/2011";

    private RuleRows() {}

    /** The rows of one table, by rule. */
    static ObjectNode of(String table) {
        ObjectNode rules = JsonNodeFactory.instance.objectNode();
        for (CSVRecord row : OwnTable.rows("/label/rules.csv")) {
            if (row.get("market").equals(table)) {
                ObjectNode rule = rules.putObject(row.get("rule"));
                rule.put("id", row.get("rule"));
                for (String field : List.of("when", "value", "asks", "says", "passage", "status")) {
                    rule.put(field, row.get(field));
                }
                rule.put("citation", row.get("source"));
            }
        }
        return rules;
    }

    /** Puts each rule in the place of the base's; where it has no 'when', 'value' or 'asks' it keeps the base's. */
    static void layOver(ObjectNode base, ObjectNode own) {
        own.properties().forEach(each -> {
            ObjectNode rule = (ObjectNode) each.getValue();
            JsonNode below = base.get(each.getKey());
            for (String field : List.of("when", "value", "asks")) {
                if (below != null && rule.get(field).textValue().isEmpty()) {
                    rule.set(field, below.get(field));
                }
            }
            base.set(each.getKey(), rule);
        });
    }

    /**
     * Makes the base's rules those of a market that keeps a copy of the same law: cited so, without passages, since the copy was
     * not read, and without what rests on other laws of the base.
     */
    static void retain(ObjectNode base, ObjectNode common, String citedAs) {
        List<String> others = new ArrayList<>();
        base.properties().forEach(each -> {
            ObjectNode rule = (ObjectNode) each.getValue();
            String citation = rule.get("citation").textValue();
            if (citation.startsWith(KEPT)) {
                rule.put("citation", citation.replace(KEPT, KEPT + " " + citedAs));
                rule.put("passage", "");
                rule.put("status", Rule.FROM_MEMORY);
            } else if (citation.startsWith("Reg.") || citation.startsWith("Directive")) {
                others.add(each.getKey());
            }
        });
        for (String id : others) {
            base.remove(id);
            if (common.has(id)) {
                base.set(id, common.get(id));
            }
        }
    }
}
