package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.piece.condition.Change;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Order;
import tenterbook.web.piece.TagFacet;

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
                "photos.0.photo",
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
            if (operation.node().has("tags")) {
                continue; // records by their description: RecordApiTest
            }
            Answer answer = tried(operation);
            String success = operation.node().get("responses").fieldNames().next();
            assertThat(answer.status()).as("%s: %s", operation, answer.text()).isEqualTo(Integer.parseInt(success));
            JsonNode content = operation.node().get("responses").get(success).get("content");
            JsonNode schema = content.get("application/json").get("schema");
            Schema.fits(description, answer.json(), schema, operation.toString());
            JsonNode example = content.get("application/json").get("example");
            if (example != null) {
                Schema.fits(description, example, schema, "the example of " + operation);
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
        if (operation.method().equals("DELETE")) {
            return client.send("DELETE", path, new byte[0]);
        }
        if (body.has("multipart/form-data")) {
            return client.postFiles(
                    path, List.of(new Client.Part("files", "fig.jpg", Pictures.jpeg(7))), "role", "front");
        }
        return client.send(
                operation.method(),
                path,
                body.get("application/json").get("example").toString().getBytes(StandardCharsets.UTF_8),
                "Content-Type",
                "application/json");
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
                        Stream.concat(Facet.OWN.stream().filter(Facet::offered), Stream.of(TagFacet.TAG))
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
                                "in",
                                "sort",
                                "page",
                                "size"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(described).isEqualTo(known);
    }

    @Test
    void theOrdersDescribedAreThoseOfTheProgram() {
        JsonNode sort = null;
        for (JsonNode parameter : description.at("/paths/~1api~1pieces/get/parameters")) {
            sort = parameter.get("name").textValue().equals("sort") ? parameter : sort;
        }
        assertThat(texts(sort.at("/schema/enum")))
                .isEqualTo(Stream.of(Order.values()).map(Order::word).toList());
        assertThat(texts(description.at("/components/schemas/Change/properties/became/enum")))
                .isEqualTo(Stream.of(Change.Kind.values()).map(Object::toString).toList());
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
}
