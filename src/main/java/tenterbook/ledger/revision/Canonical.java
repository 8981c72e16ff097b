package tenterbook.ledger.revision;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.TreeMap;
import org.erdtman.jcs.JsonCanonicalizer;
import org.erdtman.jcs.NumberToJSON;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Canonical JSON (RFC 8785), so that equal records have equal bytes and equal hashes. */
public final class Canonical {
    /** A double represents every whole number up to this. */
    private static final long WHOLE = 1L << 53;

    private Canonical() {}

    /**
     * @throws IllegalArgumentException if {@code json} is not one JSON object or array, or holds a number no double can
     *     hold
     */
    public static String json(String json) {
        try {
            return new JsonCanonicalizer(json).getEncodedString();
        } catch (IOException e) {
            throw new Refusal(Message.of("ledger.json.order", "why", Explained.of(e)), e);
        }
    }

    /**
     * As {@link #json(String)} without parsing text again, which took most of the time of a save.
     *
     * @throws IllegalArgumentException if {@code node} holds a number no double can hold
     */
    public static String json(JsonNode node) {
        StringBuilder text = new StringBuilder(256);
        write(node, text);
        return text.toString();
    }

    private static void write(JsonNode node, StringBuilder text) {
        switch (node.getNodeType()) {
            case OBJECT -> {
                // In the order of UTF-16 code units, RFC 8785, 3.2.3, which is that of Java's strings.
                TreeMap<String, JsonNode> members = new TreeMap<>();
                node.properties().forEach(member -> members.put(member.getKey(), member.getValue()));
                char before = '{';
                for (var member : members.entrySet()) {
                    quote(member.getKey(), text.append(before));
                    write(member.getValue(), text.append(':'));
                    before = ',';
                }
                text.append(members.isEmpty() ? "{}" : "}");
            }
            case ARRAY -> {
                char before = '[';
                for (JsonNode element : node) {
                    write(element, text.append(before));
                    before = ',';
                }
                text.append(node.isEmpty() ? "[]" : "]");
            }
            case STRING -> quote(node.textValue(), text);
            case NUMBER -> text.append(number(node));
            case BOOLEAN, NULL -> text.append(node.asText());
            default -> throw Refusal.of("ledger.json.none", "found", node.getNodeType());
        }
    }

    /** RFC 8785, 3.2.2.3: as the nearest double. */
    private static String number(JsonNode node) {
        if (node.isInt() || node.isLong() && node.longValue() >= -WHOLE && node.longValue() <= WHOLE) {
            return node.asText();
        }
        try {
            return NumberToJSON.serializeNumber(Double.parseDouble(node.asText()));
        } catch (IOException e) {
            throw new Refusal(Message.of("ledger.json.number", "found", node), e);
        }
    }

    /** RFC 8785, 3.2.2.2. */
    private static void quote(String string, StringBuilder text) {
        text.append('"');
        for (int i = 0; i < string.length(); i++) {
            char c = string.charAt(i);
            int named = c > '\\' ? -1 : "\b\t\n\f\r\"\\".indexOf(c);
            if (named >= 0) {
                text.append('\\').append("btnfr\"\\".charAt(named));
            } else if (c < ' ') {
                text.append(String.format("\\u%04x", (int) c));
            } else {
                text.append(c);
            }
        }
        text.append('"');
    }
}
