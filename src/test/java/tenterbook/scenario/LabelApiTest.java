package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules of labels for other programs. */
class LabelApiTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
    }

    private JsonNode statement(String... namesAndValues) throws IOException {
        Answer answer = client.get("/api/labels/fibre-statement?" + Client.form(namesAndValues));
        assertThat(answer.status()).as(answer.text()).isEqualTo(200);
        return answer.json();
    }

    private static List<String> texts(JsonNode statement, String kind) {
        List<String> texts = new ArrayList<>();
        statement.get("lines").forEach(line -> {
            if (line.get("kind").textValue().equals(kind)) {
                texts.add(line.get("text").textValue());
            }
        });
        return texts;
    }

    /** Source: 16 CFR 303.3 and Reg. (EU) 1007/2011 Art. 9: one text cannot serve both. */
    @ParameterizedTest
    @CsvSource({"us, 97% Cotton 3% Other Fiber", "eu, 97 % cotton 3 % silk", "uk, 97 % cotton 3 % silk"})
    void aSmallShareIsSaidAsEachMarketWantsIt(String market, String expected) throws IOException {
        JsonNode statement = statement("market", market, "content", "cotton:97,silk:3");
        assertThat(texts(statement, "content")).containsExactly(expected);
        assertThat(statement.get("refusals")).isEmpty();
        assertThat(statement.get("notice").textValue()).contains("no legal advice");
        assertThat(statement.get("version").textValue()).startsWith(market);
        statement.get("lines").forEach(line -> {
            assertThat(line.at("/rule/citation").textValue()).isNotBlank();
            assertThat(line.at("/rule/status").textValue()).isIn("read", "from memory: verify");
        });
    }

    /** Source: 16 CFR 303.33. */
    @Test
    void originTrimsAndPartsAreHeard() throws IOException {
        assertThat(texts(
                        statement("market", "us", "content", "hemp:100", "origin", "China", "dyedIn", "Ohio, USA"),
                        "origin"))
                .containsExactly("Made in U.S.A. of imported fabric.");
        JsonNode european = statement(
                "market",
                "eu",
                "content",
                "front=silk:100",
                "content",
                "back=linen:100",
                "trims",
                "horn toggle",
                "category",
                "wall-hanging",
                "origin",
                "India");
        assertThat(texts(european, "content")).containsExactly("Front: 100 % silk", "Back: 100 % linen");
        assertThat(texts(european, "animal-parts")).containsExactly("Contains non-textile parts of animal origin.");
        assertThat(texts(european, "origin")).containsExactly("Dyed in Portugal. Cloth woven in India.");
        assertThat(texts(european, "maker")).containsExactly("Oficina Valderim");
        assertThat(european.at("/coverage/0/citation").textValue()).contains("Annex V");
    }

    @ParameterizedTest
    @CsvSource({
        "us, 'silk:70,cotton:29', missing 1 percent",
        "eu, 'silk:70,cotton:31', Take away 1 percent",
        "eu, 'silk', Record 100",
        "us, 'Cot.:100', in full",
        "ca, 'silk:100', names in other languages",
        "jp, 'cotton:100', telephone number",
        "us, '', Name the cloth"
    })
    void whatCannotBeSaidIsRefusedWithTheRuleAndTheWayToMendIt(String market, String content, String fix)
            throws IOException {
        JsonNode statement = statement("market", market, "content", content);
        assertThat(texts(statement, "content")).isEmpty();
        List<String> fixes = new ArrayList<>();
        statement.get("refusals").forEach(refusal -> {
            fixes.add(refusal.get("fix").textValue());
            assertThat(refusal.at("/rule/citation").textValue()).isNotBlank();
        });
        assertThat(fixes.toString()).contains(fix);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "market=mars&content=silk:100",
                "content=silk:100",
                "market=us&content=silk:much",
                "market=us&content=silk:1e9",
                "market=us&content=silk:NaN",
                "market=us&content=silk:100&category=boat"
            })
    void aRequestThatIsNotUnderstoodIsToldWhy(String query) throws IOException {
        Answer answer = client.get("/api/labels/fibre-statement?" + query);
        assertThat(answer.status()).as(answer.text()).isEqualTo(400);
        assertThat(answer.text()).containsAnyOf("expected", "Expected", "should be one of", "above 0");
    }

    @Test
    void wordsThatTheMakerEnteredArePrintedAndNamedAsTheMakers() throws IOException {
        saved(
                "/studio",
                "name",
                "Oficina Valderim",
                "dyedIn",
                "Portugal",
                "currency",
                "EUR",
                "caNumber",
                "CA 12345",
                "names.0.term",
                "silk",
                "names.0.language",
                "fr-CA",
                "names.0.name",
                "soie",
                "names.0.enteredBy",
                "Inês Valderim, from the regulations",
                "version",
                "1");
        JsonNode canada = statement("market", "ca", "content", "silk:97,cotton:3");
        assertThat(texts(canada, "content")).containsExactly("97% Silk/Soie 3% Other fibre/Autre fibre");
        assertThat(texts(canada, "particulars")).containsExactly("CA 12345");
        assertThat(canada.at("/lines/0/basis").textValue())
                .contains("French (Canada) for silk entered by Inês Valderim, from the regulations");
        assertThat(client.get("/studio").text()).contains("value=\"soie\"").contains("value=\"12345\"");
    }

    @Test
    void aNameWithoutWhoEnteredItIsSentBackWithAllThatWasTyped() throws IOException {
        Answer answer = client.post(
                "/studio",
                "name",
                "Oficina Valderim",
                "currency",
                "EUR",
                "rn",
                "twelve",
                "names.0.term",
                "silk",
                "names.0.language",
                "ja",
                "names.0.name",
                "絹",
                "version",
                "1");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.text())
                .contains("value=\"絹\"")
                .contains("who entered it")
                .contains("row of digits");
        Answer another = client.post("/studio", "name", "Oficina Valderim", "order", "add names", "version", "1");
        assertThat(another.status()).isEqualTo(200);
        assertThat(another.text()).contains("names.0.term");
        assertThat(wiring.archive().studio().maker()).as("nothing was saved").isEqualTo("Inês Valderim");
    }
}
