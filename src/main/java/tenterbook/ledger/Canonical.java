package tenterbook.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
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
}
