package tenterbook.archive.record;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;

/**
 * The settings of papers issued before these were an object: a map of texts beside the paper's sheet and copies. It is kept
 * unchanged; what it leaves out was that program's default.
 *
 * @param sheet as in {@code a4}; empty where none was kept
 * @param copies 0 where none were kept
 * @param setting texts by name; empty where the paper kept only its words
 */
public record OldPaperSettings(String sheet, int copies, ObjectNode setting) {
    /** Of papers that have their settings as an object. */
    public static final OldPaperSettings NONE = new OldPaperSettings("", 0, null);

    private static final String OWN = "own.";

    public OldPaperSettings {
        sheet = sheet == null ? "" : sheet;
        setting = setting == null ? object() : setting;
    }

    /** In the present form; empty where the paper kept only its words. */
    ObjectNode settings(String kind, String market) {
        if (setting.isEmpty()) {
            return object();
        }
        return setting.has("dress") ? document(kind) : label(kind, market);
    }

    private ObjectNode label(String kind, String market) {
        ObjectNode label = object().put("kind", kind).put("market", market);
        if (setting.has("widthMm") && setting.has("heightMm")) {
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
        setting.propertyStream()
                .map(Map.Entry::getKey)
                .filter(name -> name.startsWith(OWN))
                .sorted()
                .forEach(name -> {
                    ObjectNode own =
                            placement.has("own") ? (ObjectNode) placement.get("own") : placement.putObject("own");
                    move(name, own, name.substring(OWN.length()), null);
                });
        ObjectNode finish = label.putObject("finish");
        move("blackOnly", finish, "blackOnly", "false");
        move("cutMarks", finish, "cutMarks", "true");
        move("holeMark", finish, "holeMark", "true");
        move("bleedMm", finish, "bleedMm", "0");
        ObjectNode settings = object();
        settings.set("label", label);
        return settings;
    }

    private ObjectNode document(String kind) {
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
        ObjectNode settings = object();
        settings.set("document", document);
        if (!origin.isEmpty()) {
            settings.set("origin", origin);
        }
        return settings;
    }

    /** @param absent value of a choice that is not in the map; null to leave it out */
    private void move(String from, ObjectNode into, String to, String absent) {
        String value = setting.has(from) ? setting.get(from).asText() : absent;
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
