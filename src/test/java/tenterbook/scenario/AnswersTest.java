package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.label.RuleAnswer;

/** Questions of label rules: answered once on the print page, kept with the piece and the paper, asked again where facts change. */
class AnswersTest extends Scenario {
    private static final String CLAIM = "“handmade” is claimed";
    private static final Pattern HIDDEN = Pattern.compile("name=\"answer(Rule|Asked)\" value=\"([^\"]*)\"");

    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        for (String number : List.of("V24-001", "V24-002")) {
            saved("/pieces", fields(number, "Handmade figs"));
        }
    }

    private static String[] fields(String number, String title, String... more) {
        List<String> all = new ArrayList<>(List.of("number", number, "title", title, "category", "scarf"));
        all.addAll(List.of("length", "180 cm", "width", "45 cm", "made.0.clamping", "C24-001"));
        all.addAll(Arrays.asList(more));
        return all.toArray(String[]::new);
    }

    private Piece piece(String number) {
        return wiring.archive().piece(number).orElseThrow();
    }

    private String asked(String pieces, String market) throws IOException {
        String page = client.get("/print?kind=hang-tag&market=" + market + "&pieces=" + pieces)
                .text();
        int from = page.indexOf("doubts-box");
        return from < 0 ? "" : page.substring(from, page.indexOf("</ul></details>", from));
    }

    /** Rule and question as the form of the page has them. */
    private String[] form(String box, String found) {
        Matcher hidden = HIDDEN.matcher(box);
        String rule = "";
        while (hidden.find()) {
            String value = hidden.group(2).replace("&#39;", "'").replace("&amp;", "&");
            if (hidden.group(1).equals("Rule")) {
                rule = value;
            } else if (value.contains(found)) {
                return new String[] {rule, value};
            }
        }
        throw new AssertionError("No form asks: " + found);
    }

    private String answer(String pieces, String market, String[] question, String... more) throws IOException {
        List<String> all = new ArrayList<>(List.of("pieces", pieces, "kind", "hang-tag", "market", market));
        all.addAll(List.of("answerRule", question[0], "answerAsked", question[1]));
        all.addAll(Arrays.asList(more));
        return saved("/print/answers", all.toArray(String[]::new));
    }

    @Test
    void anAnswerStaysWithThePieceAndThePaperAndIsNotAskedForAgain() throws IOException {
        String[] question = form(asked("V24-001", "eu"), CLAIM);
        answer(
                "V24-001",
                "eu",
                question,
                "answerHolds",
                "yes",
                "answerWords",
                "all but the weaving",
                "answerBy",
                "Inês");
        assertThat(piece("V24-001").label().answers()).singleElement().satisfies(answer -> {
            assertThat(answer.rule()).isEqualTo("claim.handmade");
            assertThat(answer.holds()).isTrue();
            assertThat(answer.words()).isEqualTo("all but the weaving");
            assertThat(answer.by()).isEqualTo("Inês");
            assertThat(answer.at()).isEqualTo(CLOCK.instant());
        });
        assertThat(asked("V24-001", "eu")).doesNotContain(CLAIM);
        assertThat(asked("V24-001", "us")).as("the same question elsewhere").doesNotContain(CLAIM);
        assertThat(client.get("/print?market=eu&pieces=V24-001").words())
                .contains("Answered", CLAIM, "all but the weaving");
        assertThat(client.get("/pieces/V24-001").words()).contains(CLAIM, "all but the weaving", "Inês");
        client.post("/print/issue", "pieces", "V24-001", "kind", "hang-tag", "market", "eu");
        IssuedPaper paper =
                wiring.archive().ledger().all(Kinds.ISSUED_PAPER).get(0).record();
        assertThat(paper.pieces().get(0).answers())
                .extracting(RuleAnswer::words)
                .containsExactly("all but the weaving");
        assertThat(client.get("/print/issued/" + paper.id()).words()).contains("all but the weaving");
    }

    @Test
    void itIsAskedAgainWhereItsFactsChangeAndOnlyThere() throws IOException {
        answer(
                "V24-001",
                "eu",
                form(asked("V24-001", "eu"), CLAIM),
                "answerHolds",
                "no",
                "answerWords",
                "machine hems");
        int version = wiring.archive()
                .ledger()
                .find(Kinds.PIECE, "V24-001")
                .orElseThrow()
                .version();
        saved("/pieces/V24-001/edit", fields("V24-001", "Handmade figs", "version", "" + version, "notes", "pale"));
        assertThat(piece("V24-001").label().answers())
                .as("the form keeps what it does not show")
                .hasSize(1);
        assertThat(asked("V24-001", "eu")).as("notes are no fact of it").doesNotContain(CLAIM);
        saved(
                "/pieces/V24-001/edit",
                fields("V24-001", "Handmade figs", "version", "" + (version + 1), "trims", "elastic edge"));
        assertThat(asked("V24-001", "eu")).contains(CLAIM, "Answered before, of other facts: not so. machine hems");
        assertThat(client.get("/pieces/V24-001").words()).contains("The facts have changed since");
        answer("V24-001", "eu", form(asked("V24-001", "eu"), CLAIM), "answerHolds", "yes", "answerWords", "as now");
        assertThat(piece("V24-001").label().answers())
                .as("in place of the earlier one")
                .extracting(RuleAnswer::words)
                .containsExactly("as now");
    }

    @Test
    void anAnswerIsTakenBack() throws IOException {
        String[] question = form(asked("V24-001", "eu"), CLAIM);
        answer("V24-001", "eu", question, "answerHolds", "yes", "answerWords", "by hand");
        saved("/print/answers/take-back", "piece", "V24-001", "answerRule", question[0], "answerAsked", question[1]);
        assertThat(piece("V24-001").label().answers()).isEmpty();
        assertThat(asked("V24-001", "eu")).contains(CLAIM);
        assertThat(client.get("/history/piece/V24-001").words()).contains("by hand");
    }

    @Test
    void oneAnswerServesSeveralPiecesAndOneOfTheStudioAll() throws IOException {
        answer(
                "V24-001,V24-002",
                "eu",
                form(asked("V24-001,V24-002", "eu"), CLAIM),
                "answerHolds",
                "yes",
                "answerWords",
                "by hand");
        assertThat(piece("V24-002").label().answers()).hasSize(1);
        String[] retained = form(asked("V24-001", "uk"), "keeps the regulation");
        answer("V24-001", "uk", retained, "answerHolds", "yes", "answerWords", "read on 3 May");
        assertThat(wiring.archive().studio().selling().answers()).hasSize(1);
        assertThat(asked("V24-002", "uk")).doesNotContain("keeps the regulation");
        saved("/studio", "name", "Oficina Valderim", "dyedIn", "Portugal", "version", "2", "correction", "1");
        assertThat(client.get("/studio").words()).contains("read on 3 May");
        saved("/print/answers/take-back", "answerRule", retained[0], "answerAsked", retained[1]);
        assertThat(asked("V24-002", "uk")).contains("keeps the regulation");
    }

    @Test
    void whatARuleRequiresCannotBeAnsweredAway() throws IOException {
        String box = asked("V24-001", "eu");
        assertThat(box).contains("No country of sale is recorded", "href=\"/studio\"", "Record it");
        Matcher hidden = HIDDEN.matcher(box);
        while (hidden.find()) {
            assertThat(hidden.group(2)).doesNotContain("In which member state", "registered trade name");
        }
        String language =
                "In which member state is it sold, and does the label speak its official language or languages? "
                        + "No country of sale is recorded for the piece or the studio";
        assertThat(box).contains(language);
        answer("V24-001", "eu", new String[] {"language", language}, "answerHolds", "yes", "answerWords", "it does");
        assertThat(piece("V24-001").label().answers()).isEmpty();
        answer("V24-001", "eu", form(box, CLAIM), "answerHolds", "yes", "answerWords", " ");
        assertThat(piece("V24-001").label().answers())
                .as("an answer has its reason")
                .isEmpty();
        saved("/pieces", "number", "V24-099", "title", "Handmade", "category", "scarf");
        answer("V24-099", "eu", form(box, CLAIM), "answerHolds", "yes", "answerWords", "by hand");
        assertThat(client.get("/print?market=eu&pieces=V24-099").words())
                .as("a refusal stays one")
                .contains("cannot be printed");
    }

    @Test
    void partsAndSaleAreRecordedInTheFormAndDecideTheLabel() throws IOException {
        Saved<Piece> old =
                wiring.archive().ledger().find(Kinds.PIECE, "V24-002").orElseThrow();
        saved(
                "/pieces/V24-002/edit",
                fields(
                        "V24-002",
                        "Figs",
                        "version",
                        "" + old.version(),
                        "components.0.name",
                        "lining",
                        "components.0.kind",
                        "lining",
                        "components.0.weightShare",
                        "about 40\u00a0%",
                        "components.0.fibres.0.fibre",
                        "cotton",
                        "components.0.fibres.0.percent",
                        "100",
                        "components.1.name",
                        "crane",
                        "components.1.kind",
                        "embroidery",
                        "components.1.areaShare",
                        "6 to 8",
                        "components.2.name",
                        "cord",
                        "components.2.weightShare",
                        "forgot",
                        "soldIn",
                        "Germany",
                        "madeToOrder",
                        "no"));
        Piece piece = piece("V24-002");
        assertThat(piece.label().components()).hasSize(3);
        assertThat(piece.label().madeToOrder()).isFalse();
        assertThat(client.get("/?q=crane").words()).as("parts are searched").contains("V24-002");
        assertThat(client.get("/pieces/V24-002/edit").text())
                .contains("about 40\u00a0%", "6 to 8", "forgot", "Germany");
        assertThat(client.get("/pieces/V24-002").words())
                .contains("about 40\u00a0%", "cotton", "of the surface", "Germany");
        String page =
                client.get("/print?kind=hang-tag&market=eu&pieces=V24-002").words();
        assertThat(page).contains("Body: 100 % silk", "Lining: 100 % cotton", "the label speak German?");
        assertThat(client.get("/print?kind=hang-tag&market=eu&soldIn=Ireland&pieces=V24-002")
                        .words())
                .as("a country chosen for one print")
                .doesNotContain("speak German");
        assertThat(page).contains("What is “cord”").doesNotContain("“crane”");
    }

    @Test
    void aCountryChosenAtPrintingIsKeptWithThePaper() throws IOException {
        client.post("/print/issue", "pieces", "V24-001", "kind", "hang-tag", "market", "eu", "soldIn", "Ireland");
        IssuedPaper paper =
                wiring.archive().ledger().all(Kinds.ISSUED_PAPER).get(0).record();
        assertThat(paper.settings().at("/label/content/soldIn").asText()).isEqualTo("Ireland");
    }
}
