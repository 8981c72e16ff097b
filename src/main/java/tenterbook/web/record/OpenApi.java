package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.TreeMap;
import tenterbook.archive.act.ActFields;
import tenterbook.archive.field.Schemas;
import tenterbook.archive.record.PhotoRecords;

/**
 * The description of the API (OpenAPI 3.1). The records of every kind, their schemas and their
 * routes follow from the descriptions of the kinds; all else is in {@code web/openapi.json}.
 */
public final class OpenApi {
    private static final ObjectMapper JSON = new ObjectMapper();

    private OpenApi() {}

    /** Never changes while the program runs. */
    private static final class Built {
        private static final ObjectNode DESCRIPTION = built();
    }

    /** Not to be changed: all requests share it. */
    public static ObjectNode description() {
        return Built.DESCRIPTION;
    }

    private static ObjectNode built() {
        ObjectNode description = particular();
        ObjectNode schemas = (ObjectNode) description.at("/components/schemas");
        Map<String, ObjectNode> records = new TreeMap<>();
        Schemas.collect(PhotoRecords.PHOTO, records);
        Schemas.collect(ActFields.ACT, records);
        Schemas.collect(ActFields.CORRECTION, records);
        RecordPath.ALL.forEach(path -> Schemas.collect(path.part(), records));
        records.forEach(schemas::set);
        schemas.set("versions", versions());
        ObjectNode paths = (ObjectNode) description.get("paths");
        for (RecordPath<?> path : RecordPath.ALL) {
            schemas.set("saved-" + path.part().name(), saved(path));
            add(path, paths);
        }
        return description;
    }

    private static ObjectNode particular() {
        try (InputStream in = OpenApi.class.getResourceAsStream("/web/openapi.json")) {
            return (ObjectNode) JSON.readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ObjectNode object() {
        return JSON.createObjectNode();
    }

    private static ObjectNode reference(String name) {
        return object().put("$ref", "#/components/schemas/" + name);
    }

    private static ObjectNode saved(RecordPath<?> path) {
        ObjectNode schema = object().put("type", "object");
        ObjectNode properties = schema.putObject("properties");
        if (!path.part().key().isEmpty()) {
            properties.putObject(path.part().key()).put("type", "string");
        }
        properties.putObject("version").put("type", "integer").put("minimum", 1);
        properties.putObject("savedAt").put("type", "string").put("format", "date-time");
        properties.set(path.member(), reference(path.part().name()));
        schema.putArray("required").add("version").add("savedAt").add(path.member());
        return schema;
    }

    private static ObjectNode versions() {
        ObjectNode version = object().put("type", "object");
        ObjectNode properties = version.putObject("properties");
        properties.putObject("version").put("type", "integer");
        properties.putObject("savedAt").put("type", "string").put("format", "date-time");
        properties.putObject("author").put("type", "string");
        properties.putObject("note").put("type", "string");
        properties.putObject("withdrawn").put("type", "boolean");
        properties.putObject("hash").put("type", "string").put("pattern", "^[0-9a-f]{64}$");
        properties.putObject("record").put("type", "object").put("description", w("api.as-it-is-stored"));
        ObjectNode schema = object().put("type", "object");
        schema.putObject("properties")
                .putObject("versions")
                .put("type", "array")
                .set("items", version);
        schema.putArray("required").add("versions");
        return schema;
    }

    private static void add(RecordPath<?> path, ObjectNode paths) {
        String saved = "saved-" + path.part().name();
        String called = path.kind().called().inEnglish();
        ObjectNode one = paths.withObjectProperty(path.one());
        if (path.listed()) {
            ObjectNode list = operation(w("api.list", "kind", called), path, 200, listOf(saved));
            query(list, "page", w("api.page"), 1);
            query(list, "size", w("api.size"), 50);
            paths.withObjectProperty(path.base()).set("get", list);
        }
        if (path.created()) {
            ObjectNode create = operation(w("api.create", "kind", called), path, 201, reference(saved));
            create.put("description", w("api.create-description"));
            body(create, path);
            paths.withObjectProperty(path.base()).set("post", create);
        }
        if (path.read()) {
            one.set("get", onOne(operation(w("api.read", "kind", called), path, 200, reference(saved)), path));
        }
        ObjectNode change = onOne(operation(w("api.change", "kind", called), path, 200, reference(saved)), path);
        change.put("description", w("api.change-description"));
        body(change, path);
        one.set("put", ifMatch(change));
        if (!path.single()) {
            ObjectNode gone = object().put("type", "object");
            gone.putObject("properties").putObject(path.part().key()).put("type", "string");
            gone.withObjectProperty("properties").putObject("version").put("type", "integer");
            gone.withObjectProperty("properties").putObject("withdrawn").put("type", "boolean");
            one.set("delete", ifMatch(onOne(operation(w("api.withdraw", "kind", called), path, 200, gone), path)));
        }
        paths.withObjectProperty(path.one() + "/history")
                .set("get", onOne(operation(w("api.history", "kind", called), path, 200, reference("versions")), path));
    }

    private static ObjectNode listOf(String saved) {
        ObjectNode schema = object().put("type", "object");
        ObjectNode properties = schema.putObject("properties");
        for (String name : new String[] {"total", "page", "size"}) {
            properties.putObject(name).put("type", "integer");
        }
        properties.putObject("records").put("type", "array").set("items", reference(saved));
        schema.putArray("required").add("total").add("page").add("size").add("records");
        return schema;
    }

    private static ObjectNode operation(String summary, RecordPath<?> path, int status, ObjectNode answer) {
        ObjectNode operation = object().put("summary", summary);
        operation.putArray("tags").add(path.base().substring("/api/".length()));
        ObjectNode responses = operation.putObject("responses");
        ObjectNode success = responses.putObject(Integer.toString(status)).put("description", w("api.as-asked"));
        success.putObject("content").putObject("application/json").set("schema", answer);
        for (String failure : new String[] {"400", "404", "409", "428"}) {
            responses
                    .putObject(failure)
                    .put("description", meaning(failure))
                    .putObject("content")
                    .putObject("application/json")
                    .set("schema", reference("Error"));
        }
        return operation;
    }

    private static String meaning(String status) {
        return switch (status) {
            case "400" -> w("api.status-400");
            case "404" -> w("api.status-404");
            case "409" -> w("api.status-409");
            default -> w("api.status-428");
        };
    }

    private static void query(ObjectNode operation, String name, String description, int example) {
        operation
                .withArrayProperty("parameters")
                .addObject()
                .put("name", name)
                .put("in", "query")
                .put("description", description)
                .put("example", example)
                .putObject("schema")
                .put("type", "integer");
    }

    private static ObjectNode onOne(ObjectNode operation, RecordPath<?> path) {
        if (!path.single()) {
            operation
                    .withArrayProperty("parameters")
                    .addObject()
                    .put("name", path.parameter())
                    .put("in", "path")
                    .put("required", true)
                    .putObject("schema")
                    .put("type", "string");
        }
        return operation;
    }

    private static ObjectNode ifMatch(ObjectNode operation) {
        operation
                .withArrayProperty("parameters")
                .addObject()
                .put("name", "If-Match")
                .put("in", "header")
                .put("required", true)
                .put("description", w("api.if-match"))
                .put("example", "\"3\"")
                .putObject("schema")
                .put("type", "string");
        return operation;
    }

    private static void body(ObjectNode operation, RecordPath<?> path) {
        operation
                .putObject("requestBody")
                .put("required", true)
                .putObject("content")
                .putObject("application/json")
                .set("schema", reference(path.part().name()));
    }
}
