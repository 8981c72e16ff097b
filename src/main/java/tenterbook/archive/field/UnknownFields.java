package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Fields of a stored record without a description, as a newer program writes them. They survive an edit: in the record itself,
 * in its parts, and in the rows of its lists, also where rows were moved, changed or removed. An unchanged row is matched as it
 * is, others by their key, else by the most fields in common.
 */
final class UnknownFields {
    private UnknownFields() {}

    /** @param fresh gets the fields of {@code old} that {@code part} does not describe */
    static void carry(Part<?> part, ObjectNode old, ObjectNode fresh) {
        old.properties().forEach(field -> {
            var described = part.field(field.getKey());
            if (described.isEmpty()) {
                if (!fresh.has(field.getKey())) {
                    fresh.set(field.getKey(), field.getValue().deepCopy());
                }
            } else {
                inside(described.get().value(), field.getValue(), fresh.get(field.getKey()));
            }
        });
    }

    private static void inside(Value<?> value, JsonNode old, JsonNode fresh) {
        if (value instanceof Entered<?> entered) {
            inside(entered.stored(), old, fresh);
        } else if (value instanceof Part<?> part && old instanceof ObjectNode from && fresh instanceof ObjectNode to) {
            carry(part, from, to);
        } else if (value instanceof ListOf<?> list
                && list.element() instanceof Part<?> row
                && old instanceof ArrayNode from
                && fresh instanceof ArrayNode to
                && anyInside(value, old)) {
            rows(row, from, to).forEach((was, is) -> carry(row, (ObjectNode) from.get(was), (ObjectNode) to.get(is)));
        }
    }

    private static boolean any(Part<?> part, JsonNode old) {
        if (!(old instanceof ObjectNode object)) {
            return false;
        }
        return object.properties().stream()
                .anyMatch(field -> part.field(field.getKey())
                        .map(described -> anyInside(described.value(), field.getValue()))
                        .orElse(true));
    }

    private static boolean anyInside(Value<?> value, JsonNode old) {
        if (value instanceof Entered<?> entered) {
            return anyInside(entered.stored(), old);
        }
        if (value instanceof Part<?> part) {
            return any(part, old);
        }
        return value instanceof ListOf<?> list
                && list.element() instanceof Part<?> row
                && old.isArray()
                && old.valueStream().anyMatch(each -> any(row, each));
    }

    private record Pair(int was, int is, int alike) {}

    /** Index of the new row by index of the old one, the most alike first; removed rows are left out. */
    private static Map<Integer, Integer> rows(Part<?> part, ArrayNode old, ArrayNode fresh) {
        List<Pair> pairs = new ArrayList<>();
        for (int was = 0; was < old.size(); was++) {
            for (int is = 0; old.get(was).isObject() && is < fresh.size(); is++) {
                int alike = alike(part, old.get(was), fresh.get(is), was == is);
                if (alike > 0) {
                    pairs.add(new Pair(was, is, alike));
                }
            }
        }
        pairs.sort(Comparator.comparingInt(Pair::alike).reversed());
        Map<Integer, Integer> became = new HashMap<>();
        Set<Integer> taken = new HashSet<>();
        for (Pair pair : pairs) {
            if (!became.containsKey(pair.was) && taken.add(pair.is)) {
                became.put(pair.was, pair.is);
            }
        }
        return became;
    }

    /** Similarity of two rows: an equal key outweighs all else, and the same index decides between equals. */
    private static int alike(Part<?> part, JsonNode old, JsonNode fresh, boolean samePlace) {
        int alike = 0;
        for (Field<?, ?> field : part.fields()) {
            JsonNode was = old.get(field.name());
            JsonNode is = fresh.get(field.name());
            if (was != null && is != null && known(field.value(), was).equals(known(field.value(), is))) {
                alike += part.key().equals(field.name()) ? 2_000 : 2;
            }
        }
        return alike + (samePlace ? 1 : 0);
    }

    /** The stored value as this program writes it, so that older spellings are no difference. */
    private static <V> JsonNode known(Value<V> value, JsonNode stored) {
        V read = value.read(stored, new Faults(), "");
        JsonNode written = read == null ? null : value.write(read);
        return written == null ? stored : written;
    }

    /** Fields that a form does not show are carried over like unknown ones. */
    static void keep(Part<?> part, Set<String> names, ObjectNode old, ObjectNode fresh) {
        for (String name : names) {
            int dot = name.indexOf('.');
            if (dot < 0) {
                if (old.has(name) && !fresh.has(name)) {
                    fresh.set(name, old.get(name).deepCopy());
                }
            } else if (part.field(name.substring(0, dot)).orElseThrow().value() instanceof ListOf<?> list
                    && list.element() instanceof Part<?> row
                    && fresh.get(name.substring(0, dot)) instanceof ArrayNode to) {
                keepInRows(row, name.substring(dot + 1), old.path(name.substring(0, dot)), to);
            }
        }
    }

    private static void keepInRows(Part<?> row, String name, JsonNode old, ArrayNode fresh) {
        for (JsonNode each : fresh) {
            old.valueStream()
                    .filter(other ->
                            other.get(row.key()) != null && other.get(row.key()).equals(each.get(row.key())))
                    .findFirst()
                    .ifPresent(same -> keep(row, Set.of(name), (ObjectNode) same, (ObjectNode) each));
        }
    }
}
