package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.PageSize;
import tenterbook.measure.Digest;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.condition.ChangeSinceLast;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.PhotoMark;

/** Examining a piece, examining it again, and what comes of mistakes on the way, over HTTP. */
class ConditionTest extends Scenario {
    private static final String NEW = "/pieces/V24-013/condition/new";
    private static final String LIST = "/pieces/V24-013/condition";

    private String front;
    private String back;

    @BeforeEach
    void pieceWithPhotographs() throws IOException {
        studio();
        saved("/people", "id", "museu-do-sarelho", "name", "Museu do Sarelho", "kind", "museum");
        client.postFiles(
                "/pieces",
                List.of(new Client.Part("files", "front.jpg", Pictures.jpeg(13))),
                "number",
                "V24-013",
                "title",
                "Socalco",
                "version",
                "0");
        client.postFiles(
                "/api/pieces/V24-013/photos",
                List.of(new Client.Part("files", "back.jpg", Pictures.jpeg(14))),
                "role",
                "back");
        List<String> photos = wiring.archive().piece("V24-013").orElseThrow().photos().stream()
                .map(photo -> photo.photo().hex())
                .toList();
        front = photos.get(0);
        back = photos.get(1);
    }

    private String[] report(String... more) {
        List<String> fields = new ArrayList<>(List.of(
                "when",
                "2024-03-14",
                "reason",
                "before a loan",
                "examiner",
                "Inês Valderim",
                "overall",
                "good",
                "photos.0.photo",
                front,
                "photos.0.view",
                "front",
                "photos.1.photo",
                back,
                "photos.1.view",
                "back",
                "zones.0.zone",
                "back",
                "zones.0.seen",
                "in part",
                "zones.1.zone",
                "corners",
                "observations.0.number",
                "1",
                "observations.0.what",
                "stain",
                "observations.0.zone",
                "front",
                "observations.0.extent",
                "about 8 mm",
                "observations.0.marks.0.photo",
                front,
                "observations.0.marks.0.at",
                "42,31",
                "observations.0.marks.1.photo",
                back,
                "observations.0.marks.1.at",
                "55,44 40,30",
                "handedOver.name",
                "Inês Valderim",
                "received.party",
                "museu-do-sarelho"));
        for (int i = 0; i < more.length; i += 2) {
            int at = fields.indexOf(more[i]);
            if (at >= 0 && at % 2 == 0) {
                fields.set(at + 1, more[i + 1]);
            } else {
                fields.add(more[i]);
                fields.add(more[i + 1]);
            }
        }
        return fields.toArray(String[]::new);
    }

    private Examination kept(String id) {
        return wiring.archive()
                .ledger()
                .find(Kinds.EXAMINATION, id)
                .orElseThrow()
                .record();
    }

    private void noted(String when) throws IOException {
        int version = wiring.archive()
                .ledger()
                .find(Kinds.PIECE, "V24-013")
                .orElseThrow()
                .version();
        saved(
                "/pieces/V24-013/edit",
                "version",
                "" + version,
                "title",
                "Socalco",
                "events.0.kind",
                "examined",
                "events.0.when",
                when,
                "events.0.note",
                "by the window");
    }

    @Test
    void anExaminationThatWasMerelyNotedCountsAndInvitesAReport() throws IOException {
        noted("2024-09-20");
        assertThat(client.get("/pieces/V24-013").words())
                .contains("Last examined 2024-09-20, noted without a report")
                .contains("by the window");
        Answer list = client.get(LIST);
        assertThat(list.words())
                .doesNotContain("never examined")
                .contains("Noted without a report 2024-09-20 examined. by the window Write the report of 2024-09-20");
        assertThat(list.text()).contains(NEW + "?when=2024-09-20");
        assertThat(client.get(NEW + "?when=2024-09-20").field("when")).isEqualTo("2024-09-20");
    }

    @Test
    void theNewestOfReportsAndNotesIsTheLastExamination() throws IOException {
        noted("2024-02");
        saved(LIST, report());
        assertThat(client.get("/pieces/V24-013").words())
                .contains("Last examined 2024-03-14 good: stain")
                .doesNotContain("noted without a report");
        assertThat(client.get(LIST).words()).contains("Noted without a report 2024-02");
        noted("2024-03-14");
        assertThat(client.get(LIST).words())
                .as("a report of the same day tells more")
                .doesNotContain("Noted without a report");
        noted("2024-05-01");
        assertThat(client.get("/pieces/V24-013").words()).contains("Last examined 2024-05-01, noted without a report");
    }

    @Test
    void anExaminationInTheFutureIsRefusedAndOneOfFormerTimesIsAskedAbout() throws IOException {
        Answer refused = client.post(LIST, report("when", "2204-03-14"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("“examination” is dated 2204-03-14, which lies ahead of today");
        Examination old = Kinds.EXAMINATION
                .codec()
                .fromText(("{'id': 'E24-001', 'piece': 'V24-013',"
                                + " 'when': {'entered': '2204-03-14', 'from': '2204-03-14', 'to': '2204-03-14'}}")
                        .replace('\'', '"'));
        wiring.archive().ledger().write("test", ledger -> ledger.create(Kinds.EXAMINATION, old));
        String there = "/examinations/E24-001";
        String asked = "E24-001 is dated 2204-03-14: this lies in the future; is the year right?";
        assertThat(client.get(there).words()).contains(asked);
        assertThat(client.get(LIST).words()).contains(asked);
        assertThat(client.get("/pieces/V24-013").words()).contains("is the year right?");
    }

    @Test
    void anExaminationIsOfferedThePiecesPhotographsAndSavedWithItsMarks() throws IOException {
        Answer form = client.get(NEW);
        assertThat(form.status()).isEqualTo(200);
        assertThat(form.field("photos.0.photo")).isEqualTo(front);
        assertThat(form.field("photos.1.view")).isEqualTo("back");
        assertThat(form.field("when")).isEqualTo("2024-09-30");

        assertThat(saved(LIST, report())).isEqualTo("/examinations/E24-001");

        Examination examination = kept("E24-001");
        assertThat(examination.piece()).isEqualTo(new PieceNumber("V24-013"));
        assertThat(examination.observations())
                .singleElement()
                .satisfies(stain -> assertThat(stain.marks())
                        .containsExactly(
                                PhotoMark.point(new Digest(front), 0.42, 0.31),
                                new PhotoMark(new Digest(back), 0.4, 0.3, 0.55, 0.44)));
        assertThat(examination.zones()).extracting(zone -> zone.zone()).containsExactly("back");
        Answer page = client.get("/examinations/E24-001");
        assertThat(page.words())
                .contains("Condition: good", "stain", "about 8 mm", "Marked on front, 42\u00a0% across, 31\u00a0% down")
                .contains("back, 40–55\u00a0% across, 30–44\u00a0% down", "Museu do Sarelho");
        assertThat(page.text()).contains("x=\"42.000%\" y=\"31.000%\"", "width=\"15.000%\" height=\"14.000%\"");
        assertThat(client.get(LIST).words()).contains("E24-001 2024-03-14 before a loan Inês Valderim good stain");
    }

    @Test
    void examiningAgainAsksForEachThingAnewAndTellsWhatChanged() throws IOException {
        saved(
                LIST,
                report(
                        "observations.1.number",
                        "2",
                        "observations.1.what",
                        "crease",
                        "observations.2.number",
                        "3",
                        "observations.2.what",
                        "dust"));
        Answer again = client.get(NEW);
        assertThat(again.field("earlier")).isEqualTo("E24-001");
        assertThat(again.field("observations.0.what")).isEqualTo("stain");
        assertThat(again.field("observations.0.standing")).isEqualTo("not checked");
        assertThat(again.field("observations.0.marks.1.at")).isEqualTo("40,30 55,44");
        assertThat(again.field("overall")).isEmpty();
        assertThat(again.field("zones.0.seen")).isEmpty();

        saved(
                LIST,
                report(
                        "earlier",
                        "E24-001",
                        "when",
                        "2024-09-27",
                        "observations.0.standing",
                        "worse",
                        "observations.0.extent",
                        "12 mm",
                        "observations.1.number",
                        "2",
                        "observations.1.what",
                        "crease",
                        "observations.1.standing",
                        "gone",
                        "observations.2.number",
                        "4",
                        "observations.2.what",
                        "snag"));

        Answer page = client.get("/examinations/E24-002");
        assertThat(page.words())
                .contains("1 new, 1 worse, 1 gone, 1 not checked.")
                .contains("extent 12 mm, was about 8 mm");
        assertThat(kept("E24-002").observations())
                .extracting(seen -> seen.standing())
                .containsExactly(ChangeSinceLast.WORSE, ChangeSinceLast.GONE, null);
        // What is gone is not asked for again, and its number is not given to another thing.
        Answer third = client.get(NEW);
        assertThat(third.field("observations.1.what")).isEqualTo("snag");
        assertThat(third.text()).contains("data-next=\"5\"");
        // Any two can be compared, also backwards.
        assertThat(client.get("/examinations/E24-001?against=E24-002").words()).contains("Since E24-002");
        assertThat(client.get("/examinations/E24-001?against=E24-009").status()).isEqualTo(404);
    }

    @Test
    void mistakesAreToldAllAtOnceAndNothingTypedIsLost() throws IOException {
        Answer answer = client.post(
                LIST,
                report(
                        "when",
                        "the 3rd",
                        "observations.0.marks.0.at",
                        "142,31",
                        "observations.1.number",
                        "2",
                        "observations.1.note",
                        "beside the beak",
                        "observations.0.extent",
                        "a thumb"));

        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.words())
                .contains("Not saved yet. Everything you typed is still here.")
                .contains("“the 3rd” was not understood as a date")
                .contains("“142,31” was not understood as a place on a photograph")
                .contains("“a thumb”")
                .contains("Say what was seen here, as in ‘stain’.");
        assertThat(answer.field("when")).isEqualTo("the 3rd");
        assertThat(answer.field("observations.0.marks.0.at")).isEqualTo("142,31");
        assertThat(answer.field("observations.1.note")).isEqualTo("beside the beak");
        assertThat(wiring.archive().ledger().count(Kinds.EXAMINATION)).isZero();
    }

    @Test
    void aMarkedPhotographIsNotLeftOutUnseen() throws IOException {
        Answer answer = client.post(LIST, report("photos.1.leaveOut", "1"));

        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.words())
                .contains(
                        "Observation 1 is marked on a photograph that is not in this examination. Keep the photograph");
        assertThat(answer.field("observations.0.marks.1.at")).isEqualTo("55,44 40,30");
    }

    @Test
    void rowsAreAddedNumberedAndTakenAwayWithoutScripts() throws IOException {
        Answer added = client.post(LIST, report("order", "add observations"));
        assertThat(added.status()).isEqualTo(200);
        assertThat(added.field("observations.1.number")).isEqualTo("2");
        assertThat(added.field("observations.1.what")).isEmpty();
        Answer marked = client.post(LIST, report("order", "add observations.0.marks"));
        assertThat(marked.text()).contains("name=\"observations.0.marks.2.at\"");
        Answer gone = client.post(LIST, report("order", "drop observations.0"));
        assertThat(gone.text()).doesNotContain("name=\"observations.0.what\"");
        // An added row left empty is no observation, and no mistake.
        saved(LIST, report("observations.1.number", "2", "observations.1.marks.0.photo", front));
        assertThat(kept("E24-001").observations()).hasSize(1);
    }

    @Test
    void aFurtherPhotographIsTakenInByATickOrAFile() throws IOException {
        String only = front;
        Answer ticked = client.post(
                LIST,
                "photos.0.photo",
                only,
                "photos.0.view",
                "front",
                "take." + back,
                "1",
                "order",
                "show photographs");
        assertThat(ticked.field("photos.1.photo")).isEqualTo(back);
        assertThat(ticked.field("photos.1.view")).isEqualTo("back");

        Answer sent = client.postFiles(
                LIST,
                List.of(new Client.Part("files", "raking.jpg", Pictures.jpeg(15))),
                "photos.0.photo",
                only,
                "photos.0.view",
                "front",
                "when",
                "2024-09-30");
        assertThat(sent.status()).isEqualTo(303);
        assertThat(kept("E24-001").photos()).hasSize(2);
        Answer bad = client.postFiles(
                LIST,
                List.of(new Client.Part("files", "note.jpg", "no picture".getBytes())),
                "summary",
                "still here",
                "when",
                "2024-09-30");
        assertThat(bad.status()).isEqualTo(422);
        assertThat(bad.field("summary")).isEqualTo("still here");
    }

    @Test
    void unsavedTypingIsKeptForEachPieceByItself() throws IOException {
        client.post("/pieces", "number", "V24-014", "version", "0");
        assertThat(client.post("/drafts/examination/@V24-013", "summary", "half a sentence")
                        .status())
                .isEqualTo(204);

        assertThat(client.get(NEW).field("summary")).isEqualTo("half a sentence");
        assertThat(client.get("/pieces/V24-014/condition/new").field("summary")).isEmpty();
        assertThat(client.get("/").text())
                .contains("<a href=\"/pieces/V24-013/condition/new\">a new examination of V24-013</a>");
        Answer aside = client.post("/discard-draft", "draft", "examination/@V24-013");
        assertThat(aside.location()).isEqualTo(NEW);
        assertThat(client.get(NEW).field("summary")).isEmpty();

        saved(LIST, report());
        client.post("/drafts/examination/E24-001", report("summary", "changed", "version", "1"));
        assertThat(client.get("/").text()).contains("<a href=\"/examinations/E24-001/edit\">examination E24-001</a>");
        assertThat(client.get("/examinations/E24-001/edit").field("summary")).isEqualTo("changed");
    }

    @Test
    void aChangeIsHistoryAndCanBeUndone() throws IOException {
        saved(LIST, report());
        saved("/examinations/E24-001/edit", report("overall", "poor", "version", "1"));
        Answer conflict = client.post("/examinations/E24-001/edit", report("overall", "fair", "version", "1"));
        assertThat(conflict.status()).isEqualTo(409);
        assertThat(conflict.words()).contains("overall condition poor fair");

        assertThat(client.get("/history/examination/E24-001").words()).contains("overall condition good poor");
        assertThat(saved("/history/examination/E24-001/bring-back", "version", "1"))
                .isEqualTo("/examinations/E24-001");
        assertThat(kept("E24-001").overall().toString()).isEqualTo("good");

        saved(LIST, report("earlier", "E24-001"));
        assertThat(saved("/examinations/E24-001/withdraw")).isEqualTo("/examinations/E24-001");
        assertThat(kept("E24-001")).isNotNull();
        saved("/examinations/E24-002/withdraw", "why", "wrong piece");
        assertThat(client.get("/examinations/E24-002").status()).isEqualTo(404);
        assertThat(client.get(LIST).words()).doesNotContain("E24-002");
    }

    @Test
    void whatIsNotThereIsSaidSo() throws IOException {
        assertThat(client.get("/pieces/V24-099/condition").status()).isEqualTo(404);
        assertThat(client.get("/pieces/V24-013/condition/new?from=E24-007").status())
                .isEqualTo(404);
        assertThat(client.get("/examinations/E24-007/edit").status()).isEqualTo(404);
        Answer unknown = client.post(LIST, report("party", "nobody-known"));
        assertThat(unknown.status()).isEqualTo(422);
        assertThat(unknown.words()).contains("nobody-known");
        assertThat(unknown.field("observations.0.what")).isEqualTo("stain");
    }

    @Test
    void programsRecordAndReadExaminationsWithWhatChanged() throws IOException {
        Answer first = client.postJson("/api/pieces/V24-013/examinations", """
                {"when": "2024-03-14", "reason": "before a loan",
                 "photos": [{"photo": "%s", "view": "front"}],
                 "observations": [{"what": "stain", "extent": "8 mm", "marks": [{"photo": "%s", "left": 0.42, "top": 0.31}]},
                                  {"what": "crease"}]}
                """.formatted(front, front));
        assertThat(first.status()).as(first.text()).isEqualTo(201);
        assertThat(first.header("Location")).isEqualTo("/api/examinations/E24-001");
        assertThat(first.json().at("/examination/observations/1/number").intValue())
                .isEqualTo(2);
        Answer second = client.postJson("/api/pieces/V24-013/examinations", """
                {"when": "2024-09-27", "earlier": "E24-001",
                 "observations": [{"number": 1, "what": "stain", "extent": "12 mm", "standing": "still there"},
                                  {"what": "snag"}]}
                """);
        assertThat(second.status()).as(second.text()).isEqualTo(201);

        Answer all = client.get("/api/pieces/V24-013/examinations");
        assertThat(all.json().get("next").intValue()).isEqualTo(4);
        JsonNode changes = all.json().at("/examinations/1/changes");
        assertThat(changes.findValuesAsText("number")).containsExactly("1", "2", "3");
        assertThat(changes.findValuesAsText("became")).containsExactly("still there", "not checked", "new");
        assertThat(changes.at("/0/differs/0").textValue()).isEqualTo("extent 12 mm, was 8 mm");
        assertThat(changes.at("/0/doubt").textValue()).contains("from 8 mm to 12 mm");
        assertThat(client.get("/api/pieces/V24-099/examinations").status()).isEqualTo(404);
    }

    @Test
    void whatAProgramWritesWronglyIsRefusedWithItsPlace() throws IOException {
        for (String[] each : new String[][] {
            {"{\"when\": \"the 3rd\"}", "“the 3rd” was not understood as a date"},
            {"{\"weather\": \"wet\"}", "‘weather’: There is no field of this name"},
            {"{\"id\": \"E24-009\"}", "leave out ‘id’ and ‘piece’"},
            {"{\"observations\": [{\"number\": 1}]}", "‘what’ is needed"},
            {
                "{\"observations\": [{\"what\": \"hole\", \"marks\": [{\"photo\": \"%s\", \"left\": 0.5, \"top\": 0.5}]}]}"
                        .formatted(front),
                "not in this examination"
            },
            {"{\"observations\": [{\"what\": \"hole\", \"extent\": \"3 kg\"}]}", "3 kg"},
            {
                "{\"observations\": [{\"what\": \"hole\", \"extent\": {\"entered\": \"3 mm\", \"low\": 4, \"high\": 4, \"unit\": \"millimetre\"}}]}",
                "which the numbers do not say"
            },
            {"[]", "a JSON object was expected"}
        }) {
            Answer answer = client.postJson("/api/pieces/V24-013/examinations", each[0]);
            assertThat(answer.status()).as(each[0]).isEqualTo(400);
            assertThat(answer.json().get("error").textValue()).contains(each[1]).contains("Nothing was changed");
        }
        assertThat(wiring.archive().ledger().count(Kinds.EXAMINATION)).isZero();
    }

    @Test
    void theReportIsShownIssuedAndKeptAndALaterChangeIsTold() throws IOException {
        saved(LIST, report());
        Answer shown = client.get("/examinations/E24-001/report");
        assertThat(shown.status()).as(shown.words()).isEqualTo(200);
        assertThat(shown.words()).contains("Issue the report (PDF,", "Handed over by Inês Valderim");
        assertThat(client.get("/examinations/E24-001/report/1.png").header("Content-Type"))
                .isEqualTo("image/png");
        assertThat(client.get("/examinations/E24-001/report/99.png").status()).isEqualTo(404);
        assertThat(wiring.archive().ledger().count(Kinds.ISSUED_PAPER)).isZero();

        Answer pdf = client.post("/examinations/E24-001/report", "sheet", "letter");
        assertThat(pdf.status()).isEqualTo(200);
        assertThat(new String(pdf.body(), 0, 5, java.nio.charset.StandardCharsets.US_ASCII))
                .isEqualTo("%PDF-");
        var paper = wiring.archive().ledger().all(Kinds.ISSUED_PAPER).get(0).record();
        assertThat(paper.kind()).isEqualTo("condition-report");
        assertThat(DocumentSettings.of(paper).page()).isEqualTo(PageSize.LETTER);
        assertThat(client.get("/examinations/E24-001/report").words()).doesNotContain("It was changed since");

        saved("/examinations/E24-001/edit", report("overall", "poor", "version", "1"));
        assertThat(client.get("/examinations/E24-001/report").words())
                .contains("from version 1 of the examination. It was changed since.");
        assertThat(client.get("/documents/issued/" + paper.id()).words()).contains("Good.");
        assertThat(client.get("/documents/issued/" + paper.id() + "/pdf").body())
                .isEqualTo(pdf.body());
    }

    @Test
    void aSignThatNoTypefaceHasIsToldAndNothingIsIssued() throws IOException {
        saved(LIST, report("summary", "a sign \uD808\uDC00 of clay"));
        Answer refused = client.post("/examinations/E24-001/report", "sheet", "a4");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("Nothing was issued");
        assertThat(wiring.archive().ledger().count(Kinds.ISSUED_PAPER)).isZero();
    }
}
