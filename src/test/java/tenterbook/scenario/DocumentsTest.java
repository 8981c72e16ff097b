package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentOrigin;
import tenterbook.exchange.PieceProof;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;

/** Documents over HTTP: shown before they are issued, kept when they are, and printed again from what was kept. */
class DocumentsTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        piece("V24-001", "Figueira");
        piece("V24-002", "Noite de figos");
        saved("/people", "id", "museu", "name", "Museu do Sarelho", "kind", "museum", "contact", "by the salt pans");
    }

    private void piece(String number, String title) throws IOException {
        client.postFiles(
                "/pieces",
                List.of(new Client.Part("files", number + ".jpg", Pictures.jpeg(number.hashCode()))),
                "number",
                number,
                "title",
                title,
                "length",
                "180 cm",
                "width",
                "45 cm",
                "category",
                "scarf",
                "price",
                "240",
                "made.0.clamping",
                "C24-001");
        assertThat(wiring.archive().piece(number)).isPresent();
    }

    private List<Saved<IssuedPaper>> issued() {
        return wiring.archive().ledger().all(Kinds.ISSUED_PAPER);
    }

    private static String text(Answer answer) throws IOException {
        assertThat(answer.status()).as(answer.words()).isEqualTo(200);
        try (PDDocument document = Loader.loadPDF(answer.body())) {
            return new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]+", " ");
        }
    }

    @Test
    void papersIssuedInTheSameMomentAreEachKept() throws IOException {
        for (int i = 0; i < 2; i++) {
            text(client.post("/documents/issue", "pieces", "V24-001", "kind", "insurance-list"));
            text(client.post("/documents/issue", "pieces", "V24-001 V24-002", "kind", "archive-card"));
            text(client.post("/print/issue", "pieces", "V24-001", "kind", "shelf-tag", "market", "eu"));
        }
        assertThat(issued().stream().map(saved -> saved.record().id()).distinct())
                .hasSize(8);
    }

    @Test
    void aDocumentIsShownIssuedAndReprintedInTheLanguageChosenForIt() throws IOException {
        Answer page = client.get("/documents?pieces=V24-001&kind=archive-card&language=pt");
        assertThat(page.text())
                .contains("Language of the document", "<option value=\"pt\" lang=\"pt\" selected>", "Tingida à mão");
        Answer issued = client.post("/documents/issue", "pieces", "V24-001", "kind", "archive-card", "language", "pt");
        assertThat(text(issued)).contains("Acabada", "não registado", "página 1 de 1");
        IssuedPaper paper = issued().get(0).record();
        assertThat(client.get("/documents/issued/" + paper.id() + "/pdf").body())
                .isEqualTo(issued.body());
        assertThat(client.get("/documents/issued/" + paper.id()).text())
                .contains("Print it again", "<ul class=\"plain\" lang=\"pt\">");
    }

    @ParameterizedTest
    @EnumSource(
            value = DocumentKind.class,
            names = {"CONDITION_REPORT", "PRICE_LIST", "CUSTOMS_LIST", "FAIR_CHECKLIST"},
            mode = EnumSource.Mode.EXCLUDE)
    void everyDocumentIsShownIssuedAndKept(DocumentKind kind) throws IOException {
        String asked = "pieces=V24-001&kind=" + kind.code() + "&party=museu&from=May&until=June";
        Answer page = client.get("/documents?" + asked);
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text()).contains("/documents/preview.png?pieces=V24-001", "Issue the PDF");
        Answer picture = client.get("/documents/preview.png?" + asked);
        assertThat(ImageIO.read(new ByteArrayInputStream(picture.body())).getHeight())
                .isGreaterThan(500);
        assertThat(issued()).isEmpty();
        assertThat(text(client.post(
                        "/documents/issue",
                        "pieces",
                        "V24-001",
                        "kind",
                        kind.code(),
                        "party",
                        "museu",
                        "from",
                        "May",
                        "until",
                        "June")))
                .contains("V24-001");
        assertThat(issued()).singleElement().satisfies(saved -> {
            assertThat(saved.record().kind()).isEqualTo(kind.code());
            assertThat(saved.record().template()).isEqualTo(kind.template());
            assertThat(saved.record().pieces())
                    .singleElement()
                    .satisfies(piece -> assertThat(piece.version()).isEqualTo(1));
        });
    }

    @Test
    void aDocumentPrintedAgainIsTheSameToTheByteWhateverHasChangedSince() throws IOException {
        Answer first = client.post("/documents/issue", "pieces", "V24-001", "kind", "object-id");
        String id = issued().get(0).record().id();
        saved("/pieces/V24-001/edit", "number", "V24-001", "version", "1", "title", "Another title", "length", "2 m");
        Answer again = client.get("/documents/issued/" + id + "/pdf");
        assertThat(text(again)).contains("Figueira").doesNotContain("Another title");
        assertThat(again.body()).isEqualTo(first.body());
        Answer words = client.get("/documents/issued/" + id);
        assertThat(words.words()).contains("Figueira", "The record has changed since");
    }

    @Test
    void whatWasTypedStaysAndNothingIsKeptWhereWordsCannotBePrinted() throws IOException {
        String[] typed = {
            "pieces",
            "V24-001, V24-002",
            "kind",
            "loan-schedule",
            "party",
            "Museu do Sarelho",
            "from",
            "12 January",
            "until",
            "a year",
            "insurer",
            "the borrower",
            "terms",
            "קשר"
        };
        Answer refused = client.post("/documents/issue", typed);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("Nothing was issued", "right to left");
        assertThat(refused.text())
                .contains("Museu do Sarelho", "12 January", "a year", "the borrower", "קשר")
                .contains("V24-001, V24-002");
        assertThat(issued()).isEmpty();
        typed[13] = "As agreed by the weir.";
        assertThat(text(client.post("/documents/issue", typed)))
                .contains("As agreed by the weir.", "Museu do Sarelho", "V24-002")
                .doesNotContain("by the salt pans");
        assertThat(issued())
                .singleElement()
                .satisfies(saved -> assertThat(saved.record().pieces()).hasSize(2));
    }

    @Test
    void severalPiecesHaveAPaperEachInOneFile() throws IOException {
        Answer pdf = client.post("/documents/issue", "pieces", "V24-001,V24-002", "kind", "archive-card");
        assertThat(text(pdf)).contains("V24-001", "V24-002");
        assertThat(issued()).hasSize(2);
        String second = issued().get(1).record().id();
        assertThat(text(client.get("/documents/issued/" + second + "/pdf")))
                .contains("V24-002")
                .doesNotContain("V24-001");
    }

    @Test
    void aSearchChoosesThePiecesAndAnUnknownNumberIsNamed() throws IOException {
        assertThat(client.get("/documents?board=B01&kind=insurance-list").words())
                .contains("V24-001, V24-002", "2 pieces in one document");
        Answer unknown = client.get("/documents?pieces=V99-001");
        assertThat(unknown.status()).isEqualTo(422);
        assertThat(unknown.words()).contains("There is no piece “V99-001” in this archive");
        assertThat(client.get("/documents/preview.png?pieces=V99-001").status()).isEqualTo(404);
        String typed = "pieces=v24-1,V99-001&kind=exhibition-text&text=Por+entre+as+folhas";
        Answer kept = client.get("/documents?" + typed);
        assertThat(kept.text()).contains(">V24-001, V99-001</textarea>", "Por entre as folhas</textarea>");
        assertThat(kept.words()).doesNotContain("Issue the PDF");
        int before = issued().size();
        Answer refused = client.post(
                "/documents/issue", "pieces", "V24-001,V99-001", "kind", "exhibition-text", "text", "Por entre");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.text()).contains("Nothing was issued: There is no piece", "Por entre</textarea>");
        assertThat(issued()).hasSize(before);
        assertThat(client.get("/documents").words()).contains("Numbers with commas");
        assertThat(client.get("/documents/issued/paper-0").status()).isEqualTo(404);
    }

    @Test
    void aProofFileIsCheckedOnThePageAndAnAlteredByteIsNamed() throws IOException {
        Path file = around.resolve("proof.json");
        new PieceProof(wiring.archive(), Progress.UNWATCHED).write("V24-001", Set.of(), file);
        String whole = Files.readString(file);

        assertThat(checked("proof.json", whole).words())
                .contains("The proof proof.json holds", "piece V24-001, version 1, saved", "what was recorded is true");
        assertThat(checked("proof.json", whole.replaceFirst("Figueira", "Figueirb"))
                        .words())
                .contains("does not hold", "the public part of revision", "does not give its digest: it was changed");
        assertThat(checked("odd.json", "soup").words()).contains("odd.json", "is no whole proof");
        assertThat(checked("empty.json", "").status()).isEqualTo(400);
    }

    private Answer checked(String name, String text) throws IOException {
        return client.postFiles(
                "/verify", List.of(new Client.Part("proof", name, text.getBytes(StandardCharsets.UTF_8))));
    }

    @Test
    void aCertificatesCodeIsComparedHonestly() throws IOException {
        client.post("/documents/issue", "pieces", "V24-001", "kind", "provenance-certificate");
        String code = DocumentOrigin.of(issued().get(0).record()).certificateCode();
        Answer fits = client.get("/verify?code=" + code.replace(" ", "+").toUpperCase(java.util.Locale.ROOT));
        assertThat(fits.words())
                .contains(
                        "The code fits",
                        "V24-001",
                        "It is the newest version",
                        "A certificate with this code was issued")
                .contains("It does not show that what was recorded is true");
        saved("/pieces/V24-001/edit", "number", "V24-001", "version", "1", "title", "Another title");
        assertThat(client.get("/verify?code=" + code.replace(" ", "")).words())
                .contains("The piece has a newer version");
        assertThat(client.get("/verify?code=0123456789abcdef").words())
                .contains("No record here has the code 0123 4567 89ab cdef", "This archive cannot decide which");
        Answer odd = client.get("/verify?code=%22%3E%3Cscript%3E");
        assertThat(odd.status()).isEqualTo(400);
        assertThat(odd.words()).contains("16 digits");
        assertThat(odd.text()).doesNotContain("\"><script>");
        assertThat(client.get("/verify").status()).isEqualTo(200);
    }

    private static String shown(Answer page) {
        Matcher code =
                Pattern.compile("name=\"shown\" value=\"([0-9a-f]{16})\"").matcher(page.text());
        assertThat(code.find()).as(page.words()).isTrue();
        return code.group(1);
    }

    @Test
    void whatWasNotShownIsShownOnceMoreInsteadOfBeingIssued() throws IOException {
        String asked = "/documents?kind=exhibition-text&pieces=V24-001&text=Nine+swifts";
        String code = shown(client.get(asked));
        Answer other = client.post(
                "/documents/issue",
                "kind",
                "exhibition-text",
                "pieces",
                "V24-001",
                "text",
                "Ten swifts",
                "shown",
                code);
        assertThat(other.words()).contains("This is not what was shown before", "Ten swifts", "nothing is issued yet");
        assertThat(issued()).isEmpty();
        Answer same = client.post(
                "/documents/issue",
                "kind",
                "exhibition-text",
                "pieces",
                "V24-001",
                "text",
                "Ten swifts",
                "shown",
                shown(other));
        assertThat(text(same)).contains("Ten swifts");
        assertThat(issued()).hasSize(1);
    }

    @Test
    void aTagOfARecordThatChangedSinceItWasShownIsShownOnceMore() throws IOException {
        String code = shown(client.get("/print?kind=exhibition-label&market=eu&pieces=V24-001"));
        saved("/pieces/V24-001/edit", "title", "Figueira brava", "version", "1", "made.0.clamping", "C24-001");
        Answer issue = client.post(
                "/print/issue", "kind", "exhibition-label", "market", "eu", "pieces", "V24-001", "shown", code);
        assertThat(issue.status()).isEqualTo(303);
        assertThat(client.get(issue.location()).words()).contains("Figueira brava");
        assertThat(issued()).isEmpty();
        Answer again = client.post(
                "/print/issue",
                "kind",
                "exhibition-label",
                "market",
                "eu",
                "pieces",
                "V24-001",
                "shown",
                shown(client.get(issue.location())));
        assertThat(text(again)).contains("Figueira brava");
    }
}
