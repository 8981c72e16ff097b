package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a page answers where a newcomer was misled. */
class PlainAnswersTest extends Scenario {
    private void tagged(String... more) throws IOException {
        studio();
        clamping();
        String[] fields = {"number", "V24-001", "title", "Maré", "made.0.clamping", "C24-001", "length", "120 cm"};
        String[] all = java.util.Arrays.copyOf(fields, fields.length + more.length);
        System.arraycopy(more, 0, all, fields.length, more.length);
        saved("/pieces", all);
    }

    @Test
    void aTagWithItsPriceSaysWhereNoneIsRecorded() throws IOException {
        tagged();
        String without = "V24-001: No price is recorded";
        assertThat(client.get("/print?pieces=V24-001&kind=hang_tag&showprice=1").words())
                .contains(without);
        assertThat(client.get("/print?pieces=V24-001&kind=hang_tag").words()).doesNotContain(without);
        saved(
                "/pieces/V24-001/edit",
                "version",
                "1",
                "title",
                "Maré",
                "price",
                "180 EUR",
                "made.0.clamping",
                "C24-001");
        assertThat(client.get("/print?pieces=V24-001&kind=hang_tag&showprice=1").words())
                .doesNotContain(without);
    }

    @Test
    void allLabelsOfASmallBatchAreSeenBeforePrinting() throws IOException {
        tagged();
        saved("/pieces", "number", "V24-002", "title", "Figueira", "made.0.clamping", "C24-001", "length", "90 cm");
        Answer page = client.get("/print?pieces=V24-001,V24-002&kind=hang_tag&market=eu");
        assertThat(page.words()).contains("2 of 2 are shown");
        java.util.regex.Matcher picture = java.util.regex.Pattern.compile(
                        "src=\"(/print/preview.png\\?pieces=V24-002[^\"]*)\"")
                .matcher(page.text());
        assertThat(picture.find()).isTrue();
        Answer shown = client.get(picture.group(1).replace("&amp;", "&"));
        assertThat(shown.header("Content-Type")).isEqualTo("image/png");
    }

    @Test
    void aPersonIsFoundByTheNameThatIsRecorded() throws IOException {
        saved("/people", "id", "pike", "name", "Margaret Pike");
        saved("/pieces", "number", "V24-001", "title", "Maré");
        saved(
                "/pieces/V24-001/edit",
                "version",
                "1",
                "title",
                "Maré",
                "events.0.kind",
                "sold",
                "events.0.party",
                "Margaret Pike");
        var piece = wiring.archive().piece("V24-001").orElseThrow();
        assertThat(piece.events().get(0).party().value()).isEqualTo("pike");

        Answer nobody =
                client.post("/pieces/V24-001/edit", "version", "2", "title", "Maré", "holder", "Margaret Trout");
        assertThat(nobody.status()).isEqualTo(422);
        assertThat(nobody.words())
                .contains("No person has the short name or the name “Margaret Trout”")
                .doesNotContain("party");

        saved("/people", "id", "pike-2", "name", "Margaret Pike");
        assertThat(client.post("/pieces/V24-001/edit", "version", "2", "title", "Maré", "holder", "Margaret Pike")
                        .words())
                .contains("is the name of more than one person: pike, pike-2");
    }

    @Test
    void typingThatIsPutAsideIsKeptAndOfferedOnTheFirstPage() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        client.post("/pieces/V24-001/edit", "version", "1", "title", "Maré alta", "length", "1,200");

        String form = saved("/discard-draft", "draft", "piece/V24-001");
        assertThat(form).isEqualTo("/pieces/V24-001/edit");
        assertThat(client.get(form).field("title")).isEqualTo("Maré");
        assertThat(client.get("/").text()).contains("/pieces/V24-001/edit?aside=1");
        Answer aside = client.get("/pieces/V24-001/edit?aside=1");
        assertThat(aside.field("title")).isEqualTo("Maré alta");

        saved("/pieces/V24-001/edit", "version", "1", "title", "Maré alta", "aside", aside.field("aside"));
        assertThat(wiring.archive().ledger().drafts().all()).isEmpty();
    }

    @Test
    void aRefusedPhotographIsNamed() throws IOException {
        Answer answer = client.postFiles(
                "/pieces",
                List.of(new Client.Part("files", "holiday.jpg", "no picture".getBytes())),
                "number",
                "V24-001",
                "title",
                "Maré");
        assertThat(answer.words()).contains("holiday.jpg: Photo was not added");
    }

    /** 16 CFR 303.15(b) and 303.33: the origin must always be disclosed. */
    @Test
    void aLabelForTheUnitedStatesIsHeldBackWhereTheOriginIsNotRecorded() throws IOException {
        clamping();
        saved("/pieces", "number", "V24-001", "title", "Maré", "made.0.clamping", "C24-001");
        String page = "/print?pieces=V24-001&kind=care_label&market=";
        assertThat(client.get(page + "us").words())
                .contains("The country in which it was dyed is not recorded")
                .contains("Record it under Studio");
        saved("/studio", "name", "Oficina", "maker", "Inês", "dyedIn", "USA", "version", "0");
        saved("/cloths/SH/edit", "version", "1", "name", "silk", "content.0.fibre", "silk", "content.0.percent", "100");
        assertThat(client.get(page + "us").words()).contains("where its cloth was woven is not recorded");
        assertThat(client.get(page + "us").text()).contains("/cloths/SH/edit");
    }

    @Test
    void aTagWithoutClothLeadsToTheClamping() throws IOException {
        studio();
        saved("/clampings", "id", "C24-009", "title", "figs");
        saved("/pieces", "number", "V24-001", "title", "Maré", "made.0.clamping", "C24-009");
        String page =
                client.get("/print?pieces=V24-001&kind=care_label&market=us").text();
        assertThat(page).contains("href=\"/clampings/C24-009/edit\"").contains("href=\"/cloths/new\"");
    }

    @Test
    void anExaminationStandsAmongWhatHappenedAndAnEarlierOneWithoutReportIsSaid() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        saved(
                "/pieces/V24-001/edit",
                "version",
                "1",
                "title",
                "Maré",
                "events.0.kind",
                "examined",
                "events.0.when",
                "2024-09-20");
        saved("/pieces/V24-001/condition", "when", "2024-09-28", "examiner", "Inês", "overall", "good");
        assertThat(client.get("/pieces/V24-001").words())
                .containsPattern("History.*2024-09-20.*2024-09-28 examined, report");
        var report = wiring.archive()
                .examinationsOf(wiring.archive().piece("V24-001").orElseThrow().number())
                .get(0);
        Answer document = client.get("/examinations/" + report.id() + "/report");
        assertThat(document.status()).isEqualTo(200);
        assertThat(document.words()).contains("no earlier report; examined 20 September 2024 without one");
    }

    @Test
    void aValueWithoutAUnitIsShownWithTheUnitThatWasAssumed() throws IOException {
        saved(
                "/clampings",
                "id",
                "C24-001",
                "title",
                "figs",
                "steps.0.kind",
                "dips",
                "steps.0.when",
                "forgot",
                "steps.0.temperature",
                "about 38",
                "steps.0.duration",
                "6 to 8",
                "steps.0.dips.each",
                "9 min");
        assertThat(client.get("/clampings/C24-001").words())
                .contains("about 38\u00a0°C")
                .contains("6–8\u00a0min")
                .contains("9 min")
                .contains("date: forgot");
    }
}
