package tenterbook.archive;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;

/**
 * The settings of papers issued before these were kept as an object: a map of texts by the names below, beside the paper's sheet
 * and copies. Brought into today's form; what the map leaves out is what that program took for granted.
 */
final class OldPaperSettings {
    private static final String OWN = "own.";

    private final String kind;
    private final String market;
    private final String sheet;
    private final int copies;
    private final Map<String, String> setting;

    OldPaperSettings(String kind, String market, String sheet, int copies, Map<String, String> setting) {
        this.kind = kind;
        this.market = market == null ? "" : market;
        this.sheet = sheet == null ? "" : sheet;
        this.copies = copies;
        this.setting = setting == null ? Map.of() : setting;
    }

    /** Empty where the paper was kept by its words alone. */
    JsonNode settings() {
        if (setting.isEmpty()) {
            return object();
        }
        return setting.containsKey("dress") ? document() : label();
    }

    private ObjectNode label() {
        ObjectNode label = object().put("kind", kind).put("market", market);
        if (setting.containsKey("widthMm") && setting.containsKey("heightMm")) {
            ObjectNode format = label.putObject("format");
            move("widthMm", format, "widthMm", null);
            move("heightMm", format, "heightMm", null);
            move("arrangement", format, "arrangement", null);
        }
        ObjectNode content = label.putObject("content");
        move("priceShown", content, "priceShown", "false");
        move("fullContent", content, "fullContent", "true");
        move("careSymbols", content, "careSymbols", "false");
        ObjectNode placement = label.putObject("placement").put("sheet", sheet).put("copies", Math.max(1, copies));
        move("from", placement, "from", "1");
        move("rollMm", placement, "rollMm", "62");
        setting.keySet().stream().filter(name -> name.startsWith(OWN)).sorted().forEach(name -> {
            ObjectNode own = placement.has("own") ? (ObjectNode) placement.get("own") : placement.putObject("own");
            move(name, own, name.substring(OWN.length()), null);
        });
        ObjectNode finish = label.putObject("finish");
        move("blackOnly", finish, "blackOnly", "false");
        move("cutMarks", finish, "cutMarks", "true");
        move("holeMark", finish, "holeMark", "true");
        move("bleedMm", finish, "bleedMm", "0");
        return object().set("label", label);
    }

    private ObjectNode document() {
        ObjectNode document = object().put("kind", kind);
        move("page", document, "page", null);
        move("contact", document.putObject("agreement"), "contact", "false");
        ObjectNode disclosure = document.putObject("disclosure");
        move("valued", disclosure, "values", "false");
        move("named", disclosure, "names", "false");
        move("buyers", disclosure, "buyers", "false");
        ObjectNode origin = object();
        move("code", origin, "certificateCode", null);
        move("examination", origin, "examination", null);
        move("examinationVersion", origin, "examinationVersion", null);
        ObjectNode settings = object().set("document", document);
        return origin.isEmpty() ? settings : settings.set("origin", origin);
    }

    /** @param absent what stands for a choice that is not in the map; null to leave it out */
    private void move(String from, ObjectNode into, String to, String absent) {
        String value = setting.getOrDefault(from, absent);
        if (value == null) {
            return;
        }
        if (value.equals("true") || value.equals("false")) {
            into.put(to, Boolean.parseBoolean(value));
        } else if (!to.equals("name") && value.matches("-?\\d{1,9}([.]\\d{1,9})?")) {
            into.put(to, Double.parseDouble(value));
        } else {
            into.put(to, value);
        }
    }

    private static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }
}
