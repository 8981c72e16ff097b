package tenterbook.ledger.revision;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * The record of an erasure of a person's particulars, without any of them.
 *
 * @param id as in {@code erasure-1}
 * @param day of the erasure, ISO 8601
 * @param reason in words that do not name anybody
 * @param kind of the record that was erased
 * @param handle the random name of its revisions
 * @param sequences of the revisions from which something was erased
 * @param remains by sequence, the digest of the remaining private part: {@link PrivatePart#text} with the salt in the table
 *     ‘remains’. Of other {@code sequences} no private part remains. Null where an older program erased, which did not commit
 *     to what it left
 */
public record Erasure(
        String id,
        String day,
        String reason,
        String kind,
        String handle,
        List<Long> sequences,
        @Nullable Map<Long, Digest> remains) {
    public static final Kind<Erasure> KIND =
            new Kind<>("erasure", Message.of("kind.erasure"), new Codec(), Erasure::id, erasure -> List.of());

    public Erasure {
        sequences = List.copyOf(sequences);
        remains = remains == null ? null : Map.copyOf(remains);
    }

    private static final class Codec implements RecordCodec<Erasure> {
        @Override
        public ObjectNode toJson(Erasure erasure) {
            ObjectNode json = JsonNodeFactory.instance
                    .objectNode()
                    .put("id", erasure.id)
                    .put("day", erasure.day)
                    .put("reason", erasure.reason)
                    .put("kind", erasure.kind)
                    .put("handle", erasure.handle);
            ArrayNode sequences = json.putArray("sequences");
            erasure.sequences.forEach(sequences::add);
            if (erasure.remains != null) {
                ObjectNode remains = json.putObject("remains");
                erasure.remains.forEach((sequence, digest) -> remains.put(sequence.toString(), digest.hex()));
            }
            return json;
        }

        @Override
        public Erasure fromJson(ObjectNode json) {
            JsonNode sequences = json.path("sequences");
            if (!sequences.isArray() || sequences.valueStream().anyMatch(each -> !each.isIntegralNumber())) {
                throw Refusal.of("ledger.erasure-sequences", "found", sequences);
            }
            return new Erasure(
                    text(json, "id"),
                    text(json, "day"),
                    text(json, "reason"),
                    text(json, "kind"),
                    text(json, "handle"),
                    sequences.valueStream().map(JsonNode::longValue).toList(),
                    json.has("remains") ? remains(json.path("remains")) : null);
        }

        private static Map<Long, Digest> remains(JsonNode json) {
            Map<Long, Digest> remains = new TreeMap<>();
            json.propertyStream()
                    .forEach(each -> remains.put(
                            Long.valueOf(each.getKey()),
                            new Digest(each.getValue().asText())));
            return remains;
        }

        private static String text(ObjectNode json, String name) {
            JsonNode text = json.path(name);
            if (!text.isTextual()) {
                throw Refusal.of("ledger.erasure-text", "field", name, "found", text);
            }
            return text.textValue();
        }
    }
}
