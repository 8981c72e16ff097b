package tenterbook.sample;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One saving of one record by somebody of the sample studio.
 *
 * @param at when it was saved
 * @param kind name of the kind of record, as in the ledger
 */
record Telling(Instant at, String author, String note, String kind, ObjectNode entered) {
    private static final List<String> TABLES =
            List.of("studio", "materials", "clampings", "pieces", "examinations", "agreements", "papers");
    private static final String MAKER = "Inês Valderim";

    /**
     * Everything that was saved, in order of time. In the tables a record's {@code later} list holds what changed in each
     * later saving: a field replaces the one before it, and a list named with a plus sign is added to the end.
     */
    static List<Telling> all() {
        List<Telling> all = new ArrayList<>();
        for (String table : TABLES) {
            table("/sample/" + table + ".json")
                    .properties()
                    .forEach(kind ->
                            kind.getValue().forEach(record -> savings(kind.getKey(), (ObjectNode) record, all)));
        }
        all.sort(Comparator.comparing(Telling::at));
        return all;
    }

    private static JsonNode table(String resource) {
        try (InputStream in = Telling.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("The sample table " + resource + " is not on the class path");
            }
            return new ObjectMapper().readTree(in);
        } catch (IOException e) {
            throw new IllegalStateException("The sample table " + resource + " could not be read", e);
        }
    }

    private static void savings(String kind, ObjectNode record, List<Telling> all) {
        JsonNode later = record.path("later");
        record.remove("later");
        all.add(saving(kind, record.deepCopy()));
        for (JsonNode change : later) {
            record.remove(List.of("by", "note"));
            change.properties().forEach(field -> {
                if (field.getKey().startsWith("+")) {
                    ArrayNode longer = record.withArray(field.getKey().substring(1));
                    field.getValue().forEach(longer::add);
                } else {
                    record.set(field.getKey(), field.getValue());
                }
            });
            all.add(saving(kind, record.deepCopy()));
        }
    }

    private static Telling saving(String kind, ObjectNode record) {
        Instant at = Instant.parse(record.remove("saved").asText());
        JsonNode by = record.remove("by");
        JsonNode note = record.remove("note");
        return new Telling(at, by == null ? MAKER : by.asText(), note == null ? "" : note.asText(), kind, record);
    }
}
