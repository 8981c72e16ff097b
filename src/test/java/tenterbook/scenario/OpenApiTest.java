package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.Category;
import tenterbook.piece.ColourRole;
import tenterbook.piece.EventKind;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;
import tenterbook.piece.condition.Change;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.condition.Overall;
import tenterbook.piece.condition.PhotoMark;
import tenterbook.piece.condition.PhotoView;
import tenterbook.piece.condition.Reason;
import tenterbook.piece.condition.Seen;
import tenterbook.piece.condition.Severity;
import tenterbook.piece.condition.Signatory;
import tenterbook.piece.condition.Stability;
import tenterbook.piece.condition.Standing;
import tenterbook.search.Facet;
import tenterbook.search.Order;
import tenterbook.web.TagFacet;

/** The description of the JSON interface (OpenAPI 3.1.0, sections 4.8.8 to 4.8.24) against the server it describes. */
class OpenApiTest extends Scenario {
    private JsonNode description;
    private String photograph;

    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        saved(
                "/pieces",
                "number",
                "V24-002",
                "title",
                "Fig and wasp, four dips",
                "length",
                "180 cm",
                "width",
                "6 in",
                "made.0.clamping",
                "C24-001",
                "photos.0.digest",
                photograph(),
                "photos.0.state",
                "1");
        saved(
                "/pieces/V24-002/photos/" + photograph + "/colours",
                "left",
                "5",
                "top",
                "20",
                "right",
                "45",
                "bottom",
                "90",
                "role",
                "ground");
        Answer answer = client.get("/api/openapi.json");
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.header("Content-Type")).startsWith("application/json");
        description = answer.json();
    }

    private String photograph() throws IOException {
        photograph = client.postFiles("/photos", List.of(new Client.Part("files", "a.jpg", Pictures.jpeg(1))))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        return photograph;
    }

    private record Operation(String path, String method, JsonNode node) {
        @Override
        public String toString() {
            return method + " " + path;
        }
    }

    private List<Operation> operations() {
        List<Operation> operations = new ArrayList<>();
        description
                .get("paths")
                .properties()
                .forEach(path -> path.getValue()
                        .properties()
                        .forEach(method -> operations.add(new Operation(
                                path.getKey(), method.getKey().toUpperCase(Locale.ROOT), method.getValue()))));
        return operations;
    }

    @Test
    void everyRouteIsDescribedAndEveryDescriptionIsARoute() {
        assertThat(description.get("openapi").textValue()).startsWith("3.1.");
        Set<String> served = wiring.routes().stream()
                .filter(route -> route.contains(" /api/"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(served).hasSizeGreaterThan(6);
        Set<String> described = new TreeSet<>();
        operations().forEach(operation -> described.add(operation.toString()));
        assertThat(described).isEqualTo(served);
    }

    @Test
    void everyExampleRequestWorksAndItsAnswerHasTheDescribedFields() throws IOException {
        for (Operation operation : operations()) {
            Answer answer = tried(operation);
            String success = operation.node().get("responses").fieldNames().next();
            assertThat(answer.status()).as("%s: %s", operation, answer.text()).isEqualTo(Integer.parseInt(success));
            JsonNode content = operation.node().get("responses").get(success).get("content");
            JsonNode schema = content.get("application/json").get("schema");
            fits(answer.json(), schema, operation.toString());
            JsonNode example = content.get("application/json").get("example");
            if (example != null) {
                fits(example, schema, "the example of " + operation);
            }
        }
    }

    private Answer tried(Operation operation) throws IOException {
        String path = operation.path();
        List<String> query = new ArrayList<>();
        for (JsonNode parameter : operation.node().path("parameters")) {
            if (parameter.has("x-alone")) {
                continue;
            }
            JsonNode example = parameter.get("example");
            assertThat(example)
                    .as("an example of %s in %s", parameter.get("name"), operation)
                    .isNotNull();
            String value = example.isArray() ? example.get(0).asText() : example.asText();
            if (parameter.get("name").textValue().equals("digest")) {
                path = path.replace("{digest}", photograph);
            } else if (parameter.get("in").textValue().equals("path")) {
                path = path.replace("{" + parameter.get("name").textValue() + "}", value);
            } else {
                query.add(parameter.get("name").textValue() + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8));
            }
        }
        JsonNode body = operation.node().at("/requestBody/content");
        if (operation.method().equals("GET")) {
            return client.get(query.isEmpty() ? path : path + "?" + String.join("&", query));
        }
        if (body.has("multipart/form-data")) {
            return client.postFiles(
                    path, List.of(new Client.Part("files", "fig.jpg", Pictures.jpeg(7))), "role", "front");
        }
        return client.postJson(path, body.get("application/json").get("example").toString());
    }

    @Test
    void eachParameterOfTheSearchWorksAlone() throws IOException {
        for (JsonNode parameter : description.at("/paths/~1api~1pieces/get/parameters")) {
            JsonNode example = parameter.get("example");
            String value = example.isArray() ? example.get(0).asText() : example.asText();
            String path = "/api/pieces?" + parameter.get("name").textValue() + "="
                    + URLEncoder.encode(value, StandardCharsets.UTF_8);
            assertThat(client.get(path).status()).as(path).isEqualTo(200);
        }
    }

    @Test
    void theSearchParametersAreThoseOfTheProgram() {
        Set<String> described = new TreeSet<>();
        description
                .at("/paths/~1api~1pieces/get/parameters")
                .forEach(each -> described.add(each.get("name").textValue()));
        Set<String> known = Stream.concat(
                        Stream.concat(Facet.OWN.stream(), Stream.of(TagFacet.TAG))
                                .map(Facet::parameter),
                        Stream.of(
                                "q",
                                "dips",
                                "length",
                                "width",
                                "price",
                                "finished",
                                "colour",
                                "ground",
                                "local",
                                "resist",
                                "like",
                                "within",
                                "share",
                                "sort",
                                "page",
                                "size"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(described).isEqualTo(known);
    }

    @Test
    void theChoicesDescribedAreThoseOfTheProgram() {
        for (Map.Entry<String, Object[]> each : Map.<String, Object[]>of(
                        "/components/schemas/Examination/properties/reason", Reason.values(),
                        "/components/schemas/Examination/properties/overall", Overall.values(),
                        "/components/schemas/ExaminedPhoto/properties/view", PhotoView.values(),
                        "/components/schemas/ZoneSeen/properties/seen", Seen.values(),
                        "/components/schemas/Observation/properties/severity", Severity.values(),
                        "/components/schemas/Observation/properties/stability", Stability.values(),
                        "/components/schemas/Observation/properties/standing", Standing.values(),
                        "/components/schemas/Change/properties/became", Change.Kind.values())
                .entrySet()) {
            assertThat(texts(description.at(each.getKey()).get("enum")))
                    .as(each.getKey())
                    .isEqualTo(Stream.of(each.getValue()).map(Object::toString).toList());
        }
        for (Map.Entry<String, Object[]> each : Map.<String, Object[]>of(
                        "/components/schemas/Piece/properties/category", Category.values(),
                        "/components/schemas/Piece/properties/status", Status.values(),
                        "/components/schemas/PiecePhoto/properties/role", PhotoRole.values(),
                        "/components/schemas/ColourRegion/properties/role", ColourRole.values(),
                        "/components/schemas/CareTest/properties/kind", CareTest.Kind.values(),
                        "/components/schemas/Event/properties/kind", EventKind.values(),
                        "/components/schemas/Quantity/properties/unit", Unit.values())
                .entrySet()) {
            assertThat(texts(description.at(each.getKey()).get("enum")))
                    .as(each.getKey())
                    .isEqualTo(Stream.of(each.getValue()).map(Object::toString).toList());
        }
        JsonNode sort = null;
        for (JsonNode parameter : description.at("/paths/~1api~1pieces/get/parameters")) {
            sort = parameter.get("name").textValue().equals("sort") ? parameter : sort;
        }
        assertThat(texts(sort.at("/schema/enum")))
                .isEqualTo(Stream.of(Order.values()).map(Order::word).toList());
        for (Class<? extends Record> record :
                List.of(Piece.class, Examination.class, Observation.class, PhotoMark.class, Signatory.class)) {
            Set<String> fields = new TreeSet<>();
            description
                    .at("/components/schemas/" + record.getSimpleName() + "/properties")
                    .fieldNames()
                    .forEachRemaining(fields::add);
            assertThat(fields)
                    .as(record.getSimpleName())
                    .isEqualTo(Stream.of(record.getRecordComponents())
                            .map(component -> component.getName())
                            .collect(Collectors.toCollection(TreeSet::new)));
        }
    }

    private static List<String> texts(JsonNode array) {
        List<String> texts = new ArrayList<>();
        array.forEach(each -> texts.add(each.textValue()));
        return texts;
    }

    @Test
    void everyReferenceLeadsSomewhere() {
        List<String> references = new ArrayList<>();
        description.findValues("$ref").forEach(each -> references.add(each.textValue()));
        assertThat(references)
                .isNotEmpty()
                .allSatisfy(reference -> assertThat(
                                description.at(reference.substring(1)).isMissingNode())
                        .as(reference)
                        .isFalse());
    }

    /** Types, required fields and fields without a description, down the whole answer: the part of a schema used here. */
    private void fits(JsonNode value, JsonNode schema, String where) {
        if (schema.has("$ref")) {
            fits(value, description.at(schema.get("$ref").textValue().substring(1)), where);
        } else if (schema.has("oneOf")) {
            JsonNode fitting = value.isTextual()
                    ? schema.get("oneOf").get(0)
                    : schema.get("oneOf").get(1);
            fits(value, fitting, where);
        } else {
            String type = schema.get("type").textValue();
            boolean right = switch (type) {
                case "object" -> value.isObject();
                case "array" -> value.isArray();
                case "string" -> value.isTextual();
                case "integer" -> value.isIntegralNumber();
                case "number" -> value.isNumber();
                case "boolean" -> value.isBoolean();
                default -> false;
            };
            assertThat(right).as("%s is a %s: %s", where, type, value).isTrue();
            if (schema.has("enum")) {
                assertThat(texts(schema.get("enum"))).as(where).contains(value.textValue());
            }
            schema.path("required")
                    .forEach(name -> assertThat(value.has(name.textValue()))
                            .as("%s has %s: %s", where, name, value)
                            .isTrue());
            if (schema.has("properties")) {
                value.properties().forEach(field -> {
                    JsonNode inner = schema.get("properties").get(field.getKey());
                    assertThat(inner)
                            .as("%s describes %s", where, field.getKey())
                            .isNotNull();
                    fits(field.getValue(), inner, where + "." + field.getKey());
                });
            }
            if (value.isArray()) {
                value.forEach(item -> fits(item, schema.get("items"), where + "[]"));
            }
        }
    }
}
