package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is too large, too long or no text at all is refused beside its field, whichever way it comes in. */
class InputLimitsTest extends Scenario {
    private static final String FORM = "application/x-www-form-urlencoded";

    @BeforeEach
    void fill() throws IOException {
        studio();
        saved("/pieces", "number", "V24-001", "title", "Maré");
    }

    private Answer put(String json) throws IOException {
        return put(json.getBytes(StandardCharsets.UTF_8));
    }

    private Answer put(byte[] json) throws IOException {
        return client.send("PUT", "/api/pieces/V24-001", json, "Content-Type", "application/json", "If-Match", "1");
    }

    /** The sentence beside the one field that is wrong. */
    private static String refused(Answer answer, String field) {
        assertThat(answer.status()).as(answer.text()).isEqualTo(400);
        assertThat(answer.json().path("problems").findValuesAsText("field"))
                .as(answer.text())
                .containsExactly(field);
        String sentence = answer.json().at("/problems/0/problem").textValue();
        assertThat(sentence).isNotBlank().doesNotContain("java", "fasterxml", "RFC 8785", "Infinity", "NaN is");
        assertThat(answer.json().get("error").textValue()).endsWith("Nothing was changed.");
        return sentence;
    }

    @ParameterizedTest
    @CsvSource({
        "1e400000,EUR",
        "1e2000000,EUR",
        "1e999999999,EUR",
        "1E+2147483647,EUR",
        "1e-2147483647,EUR",
        "1.005,EUR",
        "5.123,JPY",
        "-5,EUR",
        "0x10,EUR",
        "12345678901234567890123456789012345678901,EUR"
    })
    void anAmountThatCannotBeAPriceIsRefusedBesideIt(String amount, String currency) throws IOException {
        refused(put("{\"price\":{\"amount\":\"" + amount + "\",\"currency\":\"" + currency + "\"}}"), "price.amount");
    }

    @ParameterizedTest
    @CsvSource({
        "/api/pieces,finished",
        "/api/cloths,boughtOn",
        "/api/lots,boughtOn",
        "/api/clampings,when",
        "/api/boards,states.0.since"
    })
    void aDayThatIsNoneIsRefusedBesideIt(String path, String field) throws IOException {
        for (String end : new String[] {"from", "to"}) {
            for (String day : new String[] {"x", "", "2024-13-01"}) {
                String date = "{\"entered\":\"2024\",\"" + end + "\":\"" + day + "\"}";
                String[] names = field.split("\\.");
                String inside = "\"" + names[names.length - 1] + "\":" + date;
                String json = names.length == 1
                        ? "{\"id\":\"n1\",\"name\":\"n\",\"role\":\"dye\"," + inside + "}"
                        : "{\"id\":\"n1\",\"states\":[{\"name\":\"I\"," + inside + "}]}";
                Answer answer = client.postJson(path, json);
                assertThat(answer.status()).as(path + " " + answer.text()).isEqualTo(400);
                assertThat(answer.json().path("problems").findValuesAsText("field"))
                        .as(answer.text())
                        .contains(field + "." + end);
            }
        }
    }

    @Test
    void aQuantityIsTooLargeWhicheverWayItIsGiven() throws IOException {
        refused(put("{\"length\":\"999999999999 cm\"}"), "length");
        Answer object = put("{\"length\":{\"entered\":\"999999999999 cm\",\"low\":999999999999,"
                + "\"high\":999999999999,\"unit\":\"centimetre\"}}");
        assertThat(object.status()).isEqualTo(400);
        assertThat(object.json().path("problems").findValuesAsText("field"))
                .containsExactly("length.low", "length.high");
        Answer form = client.post("/pieces/V24-001/edit", "version", "1", "length", "999999999999 cm");
        assertThat(form.status()).isEqualTo(422);
        assertThat(form.field("length")).isEqualTo("999999999999 cm");
        saved("/pieces/V24-001/edit", "version", "1", "length", "999999999 cm");
        JsonNode piece = client.get("/api/pieces/V24-001").json().get("piece");
        Answer again = client.send(
                "PUT",
                "/api/pieces/V24-001",
                piece.toString().getBytes(StandardCharsets.UTF_8),
                "Content-Type",
                "application/json",
                "If-Match",
                "2");
        assertThat(again.status()).as(again.text()).isEqualTo(200);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"length\":{\"entered\":\"xx\"}} | length",
                "{\"finished\":{\"entered\":\"the day after never\"}} | finished",
                "{\"made\":[{\"clamping\":\"C24-001\",\"layers\":{\"entered\":\"some of them\"}}]} | made.0.layers",
                "{\"length\":{\"low\":1e400,\"high\":1e400,\"unit\":\"centimetre\"}} | length.low",
                "{\"photos\":[{\"state\":1e400}]} | photos.0.state",
                "{\"faults\":[{}]} | faults.0",
                "{\"faults\":[{\"note\":\" \\n\"}]} | faults.0",
                "{\"faults\":[{\"kind\":\"leak\"},{\"note\":\"\"}]} | faults.1"
            })
    void aFieldThatIsRefusedIsNamed(String json, String field) throws IOException {
        Answer answer = put(json);
        assertThat(answer.status()).as(answer.text()).isEqualTo(400);
        assertThat(answer.json().path("problems").findValuesAsText("field"))
                .as(answer.text())
                .contains(field);
        assertThat(answer.text()).doesNotContain("RFC 8785");
    }

    @Test
    void aNumberOfFourHundredNinesIsRefusedBesideItsField() throws IOException {
        Answer answer = client.postJson(
                "/api/boards",
                "{\"id\":\"B09\",\"states\":[{\"name\":\"I\",\"holes\":[{\"name\":\"1\",\"acrossMm\":" + "9".repeat(400)
                        + "}]}]}");
        refused(answer, "states.0.holes.0.acrossMm");
        assertThat(client.postJson(
                                "/api/boards",
                                "{\"id\":\"B09\",\"states\":[{\"name\":\"I\",\"holes\":[{\"name\":\"1\",\"acrossMm\":1e12}]}]}")
                        .status())
                .isEqualTo(400);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "[1, 2]",
                "\"Maré\"",
                "not JSON",
                "{\"title\": ",
                "{\"title\": \"a\"} and more",
                "{\"title\": \"a\", \"title\": \"b\"}",
                "{'title': 1}",
                "{\"edition\": 0123}"
            })
    void aBodyThatIsNoObjectIsRefusedAsAWholeInPlainWords(String body) throws IOException {
        Answer answer = put(body);
        String sentence = refused(answer, "");
        assertThat(sentence)
                .doesNotContain("MISSING", "ARRAY", "STRING", "bound as", "token", "`", "FAIL_ON", "is neither")
                .doesNotContain("Nothing was changed");
    }

    @Test
    void aTextThatIsNoUnicodeIsRefusedBesideItsField() throws IOException {
        refused(put("{\"title\":\"\\ud800x\"}"), "title");
        refused(put("{\"events\":[{\"kind\":\"washed\",\"note\":\"x\\udc00\"}]}"), "events.0.note");
        refused(put("{\"notes\":\"a\\u0000b\"}"), "notes");
        refused(put("{\"notes\":\"a\\u001bb\"}"), "notes");
        Answer kept = put("{\"notes\":\"a\\tb\\r\\nc\"}");
        assertThat(kept.status()).as(kept.text()).isEqualTo(200);
    }

    @Test
    void bytesThatAreNoUtf8AreRefused() throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        body.writeBytes("{\"title\":\"x".getBytes(StandardCharsets.UTF_8));
        body.write(0xff);
        body.writeBytes("\"}".getBytes(StandardCharsets.UTF_8));
        refused(put(body.toByteArray()), "");

        for (String typed : new String[] {"title=%ff", "title=%ED%A0%80", "title=%C3"}) {
            Answer form = client.send(
                    "POST",
                    "/pieces/V24-001/edit",
                    ("version=1&" + typed).getBytes(StandardCharsets.US_ASCII),
                    "Content-Type",
                    FORM);
            assertThat(form.status()).as(typed).isEqualTo(400);
            assertThat(form.words()).contains("UTF-8").contains("Nothing was changed");
        }
        assertThat(client.get("/api/pieces/V24-001").json().get("version").intValue())
                .isEqualTo(1);
    }

    @Test
    void aFormWithFilesIsUtf8Too() throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        String part = "--x\r\nContent-Disposition: form-data; name=\"%s\"\r\n\r\n";
        body.writeBytes((part.formatted("version") + "1\r\n" + part.formatted("title") + "Mar")
                .getBytes(StandardCharsets.US_ASCII));
        body.write(0xe9);
        body.writeBytes("\r\n--x--\r\n".getBytes(StandardCharsets.US_ASCII));
        String type = "multipart/form-data; boundary=x";
        Answer form = client.send("POST", "/pieces/V24-001/edit", body.toByteArray(), "Content-Type", type);
        assertThat(form.status()).as(form.words()).isEqualTo(400);
        assertThat(form.words()).contains("UTF-8");
        assertThat(client.get("/api/pieces/V24-001").json().at("/piece/title").textValue())
                .isEqualTo("Maré");
    }

    @ParameterizedTest
    @ValueSource(strings = {"silk:1e999999999", "silk:1e-999999999", "silk:-5", "silk:9999999999"})
    void aShareInAnAddressIsAPlainNumber(String content) throws IOException {
        Answer answer = client.get("/api/labels/fibre-statement?market=us&content=" + content);
        assertThat(answer.status()).as(answer.text()).isEqualTo(400);
        assertThat(answer.json().get("error").textValue()).contains(content);
    }

    @Test
    void aControlCharacterInAFormIsRefusedBesideItsFieldAndTheTypingStays() throws IOException {
        Answer form = client.post(
                "/pieces/V24-001/edit", "version", "1", "title", "Ma\u0007ré", "notes", "first\r\nsecond\tthird");
        assertThat(form.status()).as(form.words()).isEqualTo(422);
        assertThat(form.words()).contains("U+0007");
        assertThat(form.field("notes")).contains("second\tthird");
        saved("/pieces/V24-001/edit", "version", "1", "title", "Maré", "notes", "first\r\nsecond\tthird");
    }

    @ParameterizedTest
    @CsvSource({"about 5", "4-6", "forgot"})
    void panelsThatAreNoWholeNumberAreRefusedWithAWayOut(String panels) throws IOException {
        Answer form = client.post(
                "/clampings",
                "id",
                "C24-009",
                "fold.folds.0.axis",
                "width",
                "fold.folds.0.style",
                "accordion",
                "fold.folds.0.panels",
                panels);
        assertThat(form.status()).isEqualTo(422);
        assertThat(form.words())
                .contains("Panels of a fold")
                .contains("“" + panels + "”")
                .contains("layers counted")
                .contains("note on the folding");
        assertThat(form.field("fold.folds.0.panels")).isEqualTo(panels);
    }
}
