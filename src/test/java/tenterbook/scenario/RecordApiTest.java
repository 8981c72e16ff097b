package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.archive.Kinds;
import tenterbook.piece.Piece;

/** One story for every kind of record over HTTP: made, read, listed, changed, asked for its history, withdrawn. */
class RecordApiTest extends Scenario {
    private JsonNode description;

    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        saved("/pieces", "number", "V24-002", "title", "Fig", "made.0.clamping", "C24-001");
        description = client.get("/api/openapi.json").json();
    }

    private Answer send(String method, String path, String json, String... headers) throws IOException {
        String[] all = new String[headers.length + 2];
        System.arraycopy(headers, 0, all, 2, headers.length);
        all[0] = "Content-Type";
        all[1] = "application/json";
        return client.send(method, path, json.getBytes(StandardCharsets.UTF_8), all);
    }

    private void fits(Answer answer, String path, String method, String status) {
        JsonNode schema = description
                .get("paths")
                .get(path)
                .get(method)
                .get("responses")
                .get(status)
                .at("/content/application~1json/schema");
        assertThat(schema.isMissingNode()).as("%s %s %s", method, path, status).isFalse();
        Schema.fits(description, answer.json(), schema, method + " " + path);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "/api/boards | id | B09 | {\"image\": \"Heron\", \"length\": \"42 cm\", \"states\": [{\"name\": \"I\", \"holes\": [{\"name\": \"1\", \"acrossMm\": 12.5}]}]} | wood | pear",
                "/api/cloths | id | LV | {\"name\": \"linen\", \"content\": [{\"fibre\": \"linen\", \"percent\": 100}], \"arealWeight\": \"95 gsm\", \"price\": \"90 EUR\"} | weave | plain",
                "/api/lots | id | weld-1 | {\"name\": \"weld\", \"role\": \"dye\", \"bought\": \"2 kg\", \"boughtOn\": \"spring 2024\"} | supplier | own garden",
                "/api/people | id | casa-ondrel | {\"name\": \"Casa Ondrel\", \"kind\": \"gallery\"} | notes | opens in May",
                "/api/clampings | id | C24-009 | {\"boards\": [{\"board\": \"B01\", \"state\": \"I\"}], \"cuts\": [{\"cloth\": \"SH\", \"length\": \"1 yd\"}], \"steps\": [{\"kind\": \"dips\", \"dips\": {\"count\": \"6 to 8\"}}]} | lesson | wetter",
                "/api/pieces | number | V24-009 | {\"title\": \"Maré\", \"length\": \"180 cm\", \"events\": [{\"kind\": \"washed\", \"when\": \"about 2024\"}]} | title | Maré alta"
            })
    void aRecordIsMadeReadListedChangedAndWithdrawn(
            String base, String key, String id, String body, String field, String value) throws IOException {
        ObjectNode sent = (ObjectNode) new com.fasterxml.jackson.databind.ObjectMapper().readTree(body);
        sent.put(key, id);
        String one = base + "/" + id;
        String described = base + "/{" + key + "}";

        Answer made = send("POST", base, sent.toString());
        assertThat(made.status()).as(made.text()).isEqualTo(201);
        assertThat(made.location()).isEqualTo(one);
        fits(made, base, "post", "201");

        Answer read = client.get(one);
        assertThat(read.status()).isEqualTo(200);
        assertThat(read.header("ETag")).isEqualTo("\"1\"");
        fits(read, described, "get", "200");
        String member = read.json().properties().stream()
                .filter(each -> each.getValue().isObject())
                .findFirst()
                .orElseThrow()
                .getKey();

        if (!base.equals("/api/pieces")) {
            Answer list = client.get(base + "?page=1&size=100");
            fits(list, base, "get", "200");
            assertThat(list.json().get("records").findValuesAsText(key)).contains(id);
        }

        ObjectNode changed = read.json().get(member).deepCopy();
        changed.put(field, value);
        assertThat(send("PUT", one, changed.toString()).status()).isEqualTo(428);
        Answer after = send("PUT", one, changed.toString(), "If-Match", "\"1\"");
        assertThat(after.status()).as(after.text()).isEqualTo(200);
        fits(after, described, "put", "200");
        assertThat(after.json().get("version").intValue()).isEqualTo(2);
        assertThat(after.json().get(member)).isEqualTo(changed);
        assertThat(send("PUT", one, changed.toString(), "If-Match", "\"1\"").status())
                .as("another version was saved meanwhile")
                .isEqualTo(409);

        Answer history = client.get(one + "/history");
        fits(history, described + "/history", "get", "200");
        assertThat(history.json().get("versions")).hasSize(2);

        assertThat(send("DELETE", one, "").status()).isEqualTo(428);
        Answer gone = send("DELETE", one, "", "If-Match", "\"2\"");
        assertThat(gone.status()).as(gone.text()).isEqualTo(200);
        fits(gone, described, "delete", "200");
        assertThat(client.get(one).status()).isEqualTo(404);
        assertThat(client.get(one + "/history").json().get("versions")).hasSize(3);
        assertThat(send("POST", base, sent.toString()).status())
                .as("a name once given is never given again")
                .isEqualTo(409);
    }

    @Test
    void theStudioIsReadAndChanged() throws IOException {
        Answer read = client.get("/api/studio");
        fits(read, "/api/studio", "get", "200");
        ObjectNode studio = read.json().get("studio").deepCopy();
        studio.put("careLine", "Keep out of strong sun.");
        Answer after = send("PUT", "/api/studio", studio.toString(), "If-Match", "1");
        assertThat(after.status()).as(after.text()).isEqualTo(200);
        assertThat(client.get("/api/studio/history").json().get("versions")).hasSize(2);
    }

    @Test
    void anExaminationIsMadeWithItsPieceAndChangedByItsName() throws IOException {
        Answer made = client.postJson(
                "/api/pieces/V24-002/examinations",
                "{\"when\": \"2024-03-14\", \"observations\": [{\"what\": \"stain\", \"extent\": \"about 8 mm\"}]}");
        assertThat(made.status()).as(made.text()).isEqualTo(201);
        String one = made.location();
        Answer read = client.get(one);
        fits(read, "/api/examinations/{id}", "get", "200");
        ObjectNode examination = read.json().get("examination").deepCopy();
        examination.put("overall", "fair");
        Answer after = send("PUT", one, examination.toString(), "If-Match", "\"1\"");
        assertThat(after.status()).as(after.text()).isEqualTo(200);
        assertThat(client.get("/api/examinations").json().get("total").intValue())
                .isEqualTo(1);
        assertThat(send("DELETE", one, "", "If-Match", "\"2\"").status()).isEqualTo(200);
    }

    @Test
    void everyProblemOfAnInputStandsBesideItsField() throws IOException {
        Answer answer = client.postJson("/api/pieces", """
                {"lenght": "3 cm", "width": "5 parsecs", "status": "vanished",
                 "events": [{"kind": "sold"}, {"when": "soon", "price": "3 XXXX"}]}""");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.json().get("problems").findValuesAsText("field"))
                .containsExactlyInAnyOrder(
                        "lenght", "width", "status", "events.1.kind", "events.1.when", "events.1.price");
    }

    @Test
    void statusAndHolderComeFromEventsAndAreNotWritten() throws IOException {
        saved("/people", "id", "sala-vermia", "name", "Sala Vermia");
        Answer typed = client.postJson("/api/pieces", "{\"status\": \"sold\", \"holder\": \"sala-vermia\"}");
        assertThat(typed.status()).isEqualTo(400);
        assertThat(typed.text()).contains("Record “Sell” (the act “sell”)", "“Lend” or “Consign” with the person");
        assertThat(client.postJson("/api/pieces", "{\"status\": \"kept\"}").text())
                .contains("“kept” is not written: a piece that has not gone out needs no status");
        Answer form = client.post("/pieces", "number", "V24-010", "title", "Maré", "status", "lost");
        assertThat(form.status()).isEqualTo(422);
        assertThat(form.words()).contains("Record “Lost” (the act “lose”)");

        String lent = "\"events\": [{\"kind\": \"lent\", \"party\": \"sala-vermia\", \"when\": \"2024-05-01\"}]";
        Answer agrees = client.postJson(
                "/api/pieces",
                "{\"number\": \"V24-011\", \"status\": \"on loan\", \"holder\": \"sala-vermia\", " + lent + "}");
        assertThat(agrees.status()).as(agrees.text()).isEqualTo(201);
        assertThat(agrees.json().at("/piece/status").isMissingNode()).isTrue();
        assertThat(agrees.json().at("/piece/holder").isMissingNode()).isTrue();
    }

    @Test
    void aStatusOfFormerTimesGoesRoundAndIsNotReplacedByAnother() throws IOException {
        Piece old = Kinds.PIECE.codec().fromText("{\"number\": \"V24-012\", \"status\": \"hanging\"}");
        wiring.archive().ledger().write("maker", act -> act.create(Kinds.PIECE, old));
        ObjectNode read = client.get("/api/pieces/V24-012").json().get("piece").deepCopy();
        read.put("title", "Maré");
        Answer after = send("PUT", "/api/pieces/V24-012", read.toString(), "If-Match", "1");
        assertThat(after.status()).as(after.text()).isEqualTo(200);
        assertThat(after.json().at("/piece/status").textValue()).isEqualTo("hanging");
        read.put("status", "destroyed");
        Answer other = send("PUT", "/api/pieces/V24-012", read.toString(), "If-Match", "2");
        assertThat(other.status()).isEqualTo(400);
        assertThat(other.json().get("problems").findValuesAsText("field")).containsExactly("status");
        assertThat(other.text()).contains("Record “Destroyed” (the act “destroy”)");
    }

    @Test
    void theHoursOfAClampingAreSplitAmongItsPieces() throws IOException {
        ObjectNode clamping =
                client.get("/api/clampings/C24-001").json().get("clamping").deepCopy();
        clamping.put("hours", "7");
        Answer after = send("PUT", "/api/clampings/C24-001", clamping.toString(), "If-Match", "1");
        assertThat(after.status()).as(after.text()).isEqualTo(200);
        assertThat(client.get("/pieces/V24-002").words().replace('\u00a0', ' '))
                .contains("Hours of work 7 h share of clamping C24-001, by area");
        assertThat(client.get("/clampings/C24-001/edit").field("hours")).isEqualTo("7");
    }

    @Test
    void aRecordThatAnotherNamesIsNotWithdrawn() throws IOException {
        Answer answer = send("DELETE", "/api/clampings/C24-001", "", "If-Match", "\"1\"");
        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.json().get("error").textValue()).contains("V24-002");
        assertThat(client.get("/api/clampings/C24-001").status()).isEqualTo(200);
    }

    @Test
    void aNameNeverChangesAndTheAddressOfTheEmptyFormIsNoName() throws IOException {
        assertThat(send("PUT", "/api/boards/B01", "{\"id\": \"B02\"}", "If-Match", "1")
                        .status())
                .isEqualTo(400);
        assertThat(client.postJson("/api/boards", "{\"id\": \"new\"}").status()).isEqualTo(400);
        assertThat(client.postJson("/api/boards", "{}").json().get("problems").findValuesAsText("field"))
                .isEqualTo(List.of("id"));
    }

    @Test
    void aPageBeyondTheLastHoldsAnEmptyList() throws IOException {
        Answer answer = client.get("/api/boards?page=999999");
        fits(answer, "/api/boards", "get", "200");
        assertThat(answer.json().get("records")).isEmpty();
        assertThat(client.get("/api/pieces/V24-002/examinations")
                        .json()
                        .path("examinations")
                        .isArray())
                .isTrue();
    }

    @Test
    void aVersionThatIsNotTheNewestIsRefusedInWordsForAProgram() throws IOException {
        assertThat(send("PUT", "/api/boards/B01", "{\"wood\": \"cherry\"}", "If-Match", "1")
                        .status())
                .isEqualTo(200);
        String[][] cases = {
            {"1", "saved as version 2", "If-Match: \"2\""},
            {"16", "never was a version 16", "newest is 2"},
            {"0", "never was a version 0", "newest is 2"}
        };
        for (String[] each : cases) {
            for (String method : new String[] {"PUT", "DELETE"}) {
                Answer answer = send(method, "/api/boards/B01", "{\"wood\": \"plum\"}", "If-Match", each[0]);
                assertThat(answer.status()).isEqualTo(409);
                assertThat(answer.json().get("error").textValue())
                        .contains(each[1], each[2], "Nothing was changed")
                        .doesNotContain("shown", "another name", "choose");
            }
        }
        assertThat(client.post("/boards/B01/edit", "version", "999", "wood", "plum")
                        .words())
                .contains("never was a version 999");
    }

    @Test
    void sentencesDoNotRunTogether() throws IOException {
        Answer answer = client.postJson(
                "/api/pieces",
                "{\"finished\": {\"entered\": \"2024\", \"from\": \"2024-12-31\", \"to\": \"2024-01-01\"}, \"tilte\": \"x\"}");
        assertThat(answer.json().get("error").textValue())
                .contains("2024-01-01. ")
                .endsWith(". Nothing was changed.")
                .doesNotContain(".;", "..");
    }

    @Test
    void dipsOfAClothThatIsNotHereAreNotEstimated() throws IOException {
        Answer answer = client.get("/api/dips?cloth=nope");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.json().get("error").textValue()).contains("nope");
        assertThat(client.get("/dips?cloth=nope").words()).contains("no bolt of cloth “nope”");
        assertThat(client.get("/api/dips?cloth=SH").status()).isEqualTo(200);
    }
}
