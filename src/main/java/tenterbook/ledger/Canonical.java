package tenterbook.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.TreeMap;
import org.erdtman.jcs.JsonCanonicalizer;

/** JSON in the one form that RFC 8785 allows, so that equal records have equal bytes and equal hashes. */
public final class Canonical {
    private Canonical() {}

    /**
     * @throws IllegalArgumentException if {@code json} is not one JSON object or array, or holds a number no double can
     *     hold
     */
    public static String json(String json) {
        try {
            return new JsonCanonicalizer(json).getEncodedString();
        } catch (IOException e) {
            throw new IllegalArgumentException(
                    "This text is not JSON that RFC 8785 can put in order: " + e.getMessage(), e);
        }
    }

    public static String json(JsonNode node) {
        return json(node.toString());
    }

    /**
     * As {@link #json(JsonNode)} for an object of texts, whole numbers and truth values alone, as every digest covers;
     * written at once, without being read again as text.
     */
    static String flat(ObjectNode object) {
        StringBuilder text = new StringBuilder(256);
        TreeMap<String, JsonNode> members = new TreeMap<>();
        object.fields().forEachRemaining(member -> members.put(member.getKey(), member.getValue()));
        members.forEach((name, value) -> {
            text.append(text.isEmpty() ? '{' : ',');
            quote(name, text);
            text.append(':');
            if (value.isTextual()) {
                quote(value.textValue(), text);
            } else if (value.isInt() || value.isLong() && Math.abs(value.longValue()) < 1L << 53 || value.isBoolean()) {
                text.append(value.asText());
            } else {
                throw new IllegalArgumentException("Not a text, a whole number or a truth value: " + name);
            }
        });
        return text.append('}').toString();
    }

    /** RFC 8785, 3.2.2.2. */
    private static void quote(String string, StringBuilder text) {
        text.append('"');
        for (int i = 0; i < string.length(); i++) {
            char c = string.charAt(i);
            int named = "\b\t\n\f\r\"\\".indexOf(c);
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
