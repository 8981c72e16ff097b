package tenterbook.ledger.revision;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tenterbook.words.Refusal;

/**
 * A record's JSON, split into its public and its private part. The public part is the record without its private fields; a
 * private element of a list leaves a {@code null} in its place. The private part is an object of private values by JSON pointer
 * (RFC 6901). Setting every value at its pointer, in any order, restores the record; no pointer lies within another.
 *
 * @param shown the public part, canonical JSON
 * @param fields the private part, canonical JSON
 */
public record TwoParts(String shown, String fields) {
    public static final String NO_FIELDS = "{}";
    private static final String ANY = "*";

    public static TwoParts split(String record, Privacy privacy) {
        if (privacy.fields().isEmpty()) {
            return new TwoParts(record, NO_FIELDS);
        }
        ObjectNode shown = RecordCodec.parsed(record);
        ObjectNode fields = JsonNodeFactory.instance.objectNode();
        // The shortest first, since fields within a removed one are gone with it.
        privacy.fields().stream()
                .map(path -> List.of(path.split("\\.")))
                .sorted(Comparator.comparingInt(List::size))
                .forEach(path -> take(shown, "", path, fields));
        return fields.isEmpty()
                ? new TwoParts(record, NO_FIELDS)
                : new TwoParts(Canonical.json(shown), Canonical.json(fields));
    }

    /** Splits at pointers from an earlier split; one that leads nowhere is ignored. */
    public static TwoParts split(String record, Collection<String> pointers) {
        ObjectNode shown = RecordCodec.parsed(record);
        ObjectNode fields = JsonNodeFactory.instance.objectNode();
        for (String pointer : pointers) {
            int last = pointer.lastIndexOf('/');
            takeOne(shown.at(pointer.substring(0, last)), unescaped(pointer.substring(last + 1)), pointer, fields);
        }
        return new TwoParts(Canonical.json(shown), Canonical.json(fields));
    }

    private static void take(JsonNode node, String at, List<String> path, ObjectNode fields) {
        String head = path.get(0);
        for (String token : head.equals(ANY) ? tokens(node) : List.of(head)) {
            String pointer = at + "/" + escaped(token);
            if (path.size() == 1) {
                takeOne(node, token, pointer, fields);
            } else {
                child(node, token).ifPresent(inner -> take(inner, pointer, path.subList(1, path.size()), fields));
            }
        }
    }

    private static void takeOne(JsonNode parent, String token, String pointer, ObjectNode fields) {
        Optional<JsonNode> value = child(parent, token);
        if (value.isEmpty() || fields.has(pointer)) {
            return;
        }
        fields.set(pointer, value.get());
        if (parent instanceof ObjectNode object) {
            object.remove(token);
        } else if (parent instanceof ArrayNode list) {
            list.set(Integer.parseInt(token), NullNode.instance);
        }
    }

    public static List<String> tokens(JsonNode node) {
        if (node instanceof ArrayNode list) {
            return java.util.stream.IntStream.range(0, list.size())
                    .mapToObj(Integer::toString)
                    .toList();
        }
        Iterable<String> names = node::fieldNames;
        return java.util.stream.StreamSupport.stream(names.spliterator(), false).toList();
    }

    public static Optional<JsonNode> child(JsonNode node, String token) {
        if (node instanceof ArrayNode list) {
            return token.matches("0|[1-9][0-9]{0,8}")
                    ? Optional.ofNullable(list.get(Integer.parseInt(token)))
                    : Optional.empty();
        }
        return Optional.ofNullable(node.get(token));
    }

    /**
     * The whole record as canonical JSON.
     *
     * @throws IllegalArgumentException where a pointer leads nowhere, since the parts do not belong together
     */
    public String merged() {
        if (fields.equals(NO_FIELDS)) {
            return shown;
        }
        ObjectNode record = RecordCodec.parsed(shown);
        for (var field : RecordCodec.parsed(fields).properties()) {
            int last = field.getKey().lastIndexOf('/');
            String token = unescaped(field.getKey().substring(last + 1));
            JsonNode parent = last < 0 ? null : record.at(field.getKey().substring(0, last));
            if (parent instanceof ObjectNode object) {
                object.set(token, field.getValue());
            } else if (parent instanceof ArrayNode list && child(list, token).isPresent()) {
                list.set(Integer.parseInt(token), field.getValue());
            } else {
                throw Refusal.of("ledger.check.no-place", "field", field.getKey());
            }
        }
        return Canonical.json(record);
    }

    public static String escaped(String token) {
        return token.replace("~", "~0").replace("/", "~1");
    }

    public static String unescaped(String token) {
        return token.replace("~1", "/").replace("~0", "~");
    }
}
