package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.archive.record.PieceRecord;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;

/** Labels over HTTP: shown before they are printed, kept when they are, and held back where a rule says so. */
class PrintTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        saved(
                "/pieces",
                "number",
                "V24-001",
                "title",
                "Figueira",
                "length",
                "180 cm",
                "width",
                "45 cm",
                "category",
                "scarf",
                "made.0.clamping",
                "C24-001");
        saved("/pieces", "number", "V24-099", "title", "Found in a drawer", "category", "wall hanging");
    }

    private List<Saved<IssuedPaper>> issued() {
        return wiring.archive().ledger().all(Kinds.ISSUED_PAPER);
    }

    private static String pdfText(Answer answer) throws IOException {
        try (PDDocument document = Loader.loadPDF(answer.body())) {
            return new PDFTextStripper().getText(document).replaceAll("[\u00a0\u2007\u202f]", " ");
        }
    }

    @Test
    void aLabelIsShownBeforeItIsPrinted() throws IOException {
        Answer page = client.get("/print?pieces=V24-001&kind=hang-tag&market=us");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words()).doesNotContain("cannot be printed").contains("Make the PDF");
        String preview = page.text()
                .replaceAll("(?s).*<img src=\"(/print/preview[^\"]*)\".*", "$1")
                .replace("&amp;", "&");
        Answer picture = client.get(preview);
        assertThat(picture.status()).isEqualTo(200);
        assertThat(picture.header("Content-Type")).isEqualTo("image/png");
        assertThat(picture.body()).startsWith(0x89, 'P', 'N', 'G');
        // A hang tag is 55 mm by 90 mm.
        var image = ImageIO.read(new ByteArrayInputStream(picture.body()));
        assertThat((double) image.getHeight() / image.getWidth())
                .isCloseTo(90 / 55.0, org.assertj.core.api.Assertions.within(0.02));
        assertThat(issued()).as("looking prints nothing").isEmpty();
    }

    @Test
    void whatIsPrintedIsKeptWordForWordAndNamedByItsPiece() throws IOException {
        Answer pdf =
                client.post("/print/issue", "pieces", "V24-001", "kind", "hang-tag", "market", "us", "sheet", "single");
        assertThat(pdf.status()).isEqualTo(200);
        assertThat(pdf.header("Content-Type")).isEqualTo("application/pdf");
        assertThat(pdfText(pdf)).contains("Figueira").contains("V24-001").contains("100% Silk");
        assertThat(issued()).singleElement().satisfies(saved -> {
            IssuedPaper paper = saved.record();
            assertThat(paper.kind()).isEqualTo("hang-tag");
            assertThat(paper.market()).isEqualTo("us");
            assertThat(paper.pieces().get(0).version()).isEqualTo(1);
            assertThat(String.join("\n", paper.pieces().get(0).text())).contains("Figueira");
            assertThat(wiring.archive().ledger().referencedBy(Kinds.PIECE.key("V24-001")))
                    .contains(Kinds.ISSUED_PAPER.key(paper.id()));
            assertThat(client.get("/print/issued/" + paper.id()).words()).contains("Figueira");
        });
        assertThat(client.get("/print?pieces=V24-001").words()).contains("Printed before");

        saved("/pieces/V24-001/edit", "version", "1", "title", "Another title", "made.0.clamping", "C24-001");
        assertThat(issued())
                .singleElement()
                .satisfies(saved -> assertThat(
                                String.join(" ", saved.record().pieces().get(0).text()))
                        .as("a later change of the piece changes nothing that was printed")
                        .contains("Figueira")
                        .doesNotContain("Another title"));
    }

    @Test
    void aPieceOnPaperCannotBeWithdrawn() throws IOException {
        client.post("/print/issue", "pieces", "V24-001", "kind", "hang-tag", "market", "us");
        client.post("/pieces/V24-001/withdraw", "why", "tidying");
        assertThat(wiring.archive().piece("V24-001")).isPresent();
    }

    @Test
    void withoutFibreContentTheTagIsHeldBackWithTheReasonAndNothingIsIssued() throws IOException {
        for (String kind : List.of("hang-tag", "care-label")) {
            Answer page = client.get("/print?pieces=V24-099&market=us&kind=" + kind);
            assertThat(page.status()).isEqualTo(200);
            assertThat(page.words())
                    .contains("cannot be printed")
                    .contains("V24-099")
                    .doesNotContain("Make the PDF");
            assertThat(page.words().toLowerCase(java.util.Locale.ROOT)).contains("fibre");
            Answer issue = client.post("/print/issue", "pieces", "V24-099", "kind", kind, "market", "us");
            assertThat(issue.status()).isEqualTo(303);
            assertThat(client.get(issue.location()).words()).contains("cannot be printed");
            Answer preview = client.get("/print/preview.png?pieces=V24-099&market=us&kind=" + kind);
            assertThat(preview.status())
                    .as("a picture of what may not be printed")
                    .isEqualTo(422);
        }
        assertThat(client.post("/print/issue", "pieces", "V24-001,V24-099", "kind", "hang-tag", "market", "us")
                        .status())
                .as("one blocked label holds back the sheet")
                .isEqualTo(303);
        assertThat(issued()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"Maré \uD83C\uDF0A", "שלום", "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"})
    void wordsThatPaperCannotHoldAreToldBeforePrinting(String title) throws IOException {
        saved("/pieces", "number", "V24-100", "title", title);
        String both = "/print?kind=exhibition-label&market=eu&pieces=V24-100,V24-001";
        Answer page = client.get(both);
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words())
                .contains("One label cannot be printed")
                .contains("V24-100")
                .doesNotContain("Make the PDF");
        String preview = page.text()
                .replaceAll("(?s).*<img src=\"(/print/preview[^\"]*)\".*", "$1")
                .replace("&amp;", "&");
        assertThat(preview).as("the first that can be printed").contains("V24-001");
        assertThat(client.get(preview).status()).isEqualTo(200);
        Answer issue = client.post(
                "/print/issue", "pieces", "V24-100", "kind", "exhibition-label", "market", "eu", "sheet", "single");
        assertThat(issue.status()).isEqualTo(303);
        assertThat(client.get(issue.location()).words()).contains("cannot be printed");
        assertThat(issued()).isEmpty();
    }

    @Test
    void aRefusalLeadsToTheFormThatMendsIt() throws IOException {
        saved("/cloths", "id", "XX", "name", "gift cloth");
        saved("/clampings", "id", "C24-002", "cuts.0.cloth", "XX");
        saved("/pieces", "number", "V24-002", "category", "scarf", "made.0.clamping", "C24-002");
        String held =
                client.get("/print?pieces=V24-002&kind=hang-tag&market=eu").text();
        assertThat(held).contains("href=\"/cloths/XX/edit\">Edit cloth XX</a>");
        assertThat(client.get("/print?pieces=V24-099&kind=hang-tag&market=eu").text())
                .contains("href=\"/pieces/V24-099/edit\">Edit V24-099</a>");
        assertThat(client.get("/print?pieces=V24-001&kind=hang-tag&market=ca").text())
                .as("Canada asks for the name in French, which stands with the studio")
                .contains("<a href=\"/studio\">Studio</a>");
    }

    @Test
    void aLabelWithoutRoomIsToldWhichHeightWouldHoldIt() throws IOException {
        String address = "/print?pieces=V24-001&kind=hang-tag&market=us&high=";
        int high = 90;
        String page = client.get(address + high).words();
        while (!page.contains("has no room in") && high > 40) {
            high -= 5;
            page = client.get(address + high).words();
        }
        assertThat(page).contains("has no room in", "It fits 55 by %d mm.".formatted(high + 5));
        assertThat(client.get(address + (high + 5)).words())
                .doesNotContain("has no room in")
                .contains("Make the PDF");
    }

    @Test
    void aQuestionOfABatchIsAskedOnceWithItsPieces() throws IOException {
        saved("/pieces", "number", "V24-002", "title", "Maré", "category", "scarf", "made.0.clamping", "C24-001");
        String page = client.get("/print?pieces=V24-001,V24-002&kind=hang-tag&market=us")
                .words();
        assertThat(page).containsOnlyOnce("Does the piece also carry a sewn label?");
        assertThat(page).contains("V24-001, V24-002: Does the piece also carry a sewn label?");
    }

    @Test
    void aMistypedNumberIsNamedAndTheRestIsKept() throws IOException {
        Answer page = client.get("/print?pieces=V24-001,V24-999&kind=exhibition-label&market=us&copies=3");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words())
                .contains("There is no piece “V24-999” in this archive")
                .contains("Go on with the other 1")
                .doesNotContain("Make the PDF");
        assertThat(page.text()).contains(">V24-001, V24-999</textarea>", "/print/preview.png?pieces=V24-001");
        assertThat(page.field("copies")).isEqualTo("3");
        Answer issue = client.post("/print/issue", "pieces", "V24-001,V24-999", "kind", "exhibition-label");
        assertThat(issue.status()).isEqualTo(303);
        assertThat(client.get(issue.location()).words()).contains("There is no piece “V24-999”");
        assertThat(issued()).isEmpty();
    }

    @Test
    void aNumberIsUnderstoodWithoutItsZerosOrCapitalsWhereOnePieceFits() throws IOException {
        assertThat(client.get("/print?pieces=v24-1&kind=exhibition-label").text())
                .contains(">V24-001</textarea>");
        saved("/pieces", "number", "V24-01", "title", "Another");
        assertThat(client.get("/print?pieces=v24-1&kind=exhibition-label").words())
                .as("two pieces fit")
                .contains("There is no piece “v24-1”");
        assertThat(client.get("/print?pieces=v24-01&kind=exhibition-label").text())
                .contains(">V24-01</textarea>");
    }

    @Test
    void asManyLabelsAsCanBePrintedCanBeNamedInAnAddress() throws Exception {
        List<String> numbers = IntStream.rangeClosed(1000, 2000)
                .mapToObj(number -> "V23-" + number)
                .toList();
        List<Piece> pieces = numbers.stream()
                .map(number -> PieceRecord.PIECE.fromText("{\"number\": \"" + number + "\"}"))
                .toList();
        wiring.archive().ledger().write("maker", act -> {
            pieces.forEach(piece -> act.create(Kinds.PIECE, piece));
            return null;
        });
        String thousand = String.join(", ", numbers.subList(0, 1000));
        assertThat(client.get("/print?" + Client.form("kind", "exhibition-label", "pieces", thousand))
                        .words())
                .contains("1000 labels")
                .doesNotContain("At most");
        String all = "/print?kind=exhibition-label&finished=&sort=title&page=1";
        long until = System.nanoTime() + 60_000_000_000L;
        while (client.get(all).words().contains("still catching up") && System.nanoTime() < until) {
            Thread.sleep(50);
        }
        assertThat(client.get(all).words())
                .as("all that a search finds")
                .contains("1003 labels, for all that your search finds");
        Answer refused = client.post("/print/issue", "kind", "hang-tag", "market", "us", "pieces", thousand);
        assertThat(refused.status()).as("many are work to watch").isEqualTo(303);
        assertThat(refused.location()).startsWith("/work/");
        assertThat(over(refused.location())).contains("1000 labels cannot be printed");
        assertThat(issued()).isEmpty();
    }

    @Test
    void aRangeOfPricesChoosesPiecesAndThePriceOnTheTagIsAnotherChoice() throws IOException {
        saved("/pieces", "number", "V24-300", "title", "Dear", "price", "900");
        saved("/pieces", "number", "V24-301", "title", "Cheap", "price", "90");
        Answer page = client.get("/print?price=..100&kind=exhibition-label&market=eu");
        assertThat(page.words()).contains("One label").contains("Cheap").doesNotContain("Dear");
    }

    @Test
    void labelsStoppedWhileTheyAreLaidOutAreShownAsStoppedAndNotIssued() throws IOException {
        List<String> numbers = new ArrayList<>();
        for (int i = 101; i <= 120; i++) {
            saved("/pieces", "number", "V24-" + i, "title", "Figueira", "category", "wall hanging");
            numbers.add("V24-" + i);
        }
        String work =
                saved("/print/issue", "pieces", String.join(",", numbers), "kind", "exhibition-label", "copies", "200");
        assertThat(work).startsWith("/work/");
        Answer running = client.get(work, "HX-Request", "true");
        while (!running.words().contains(" of 4")) {
            assertThat(running.text()).as("still at work").contains("<progress");
            running = client.get(work, "HX-Request", "true");
        }
        saved(work + "/stop");
        assertThat(over(work)).contains("Stopped as asked");
        assertThat(issued()).isEmpty();
    }

    @Test
    void anExhibitionLabelStatesNoFibresAndPrintsAllTheSame() throws IOException {
        Answer pdf = client.post("/print/issue", "pieces", "V24-099", "kind", "exhibition-label", "market", "eu");
        assertThat(pdf.header("Content-Type")).isEqualTo("application/pdf");
        assertThat(pdfText(pdf)).contains("Found in a drawer");
        assertThat(issued()).hasSize(1);
    }

    @Test
    void allThatASearchFindsCanBePrintedAndAnUnknownPieceIsTold() throws IOException {
        assertThat(client.get("/print?status=&board=B01&kind=hang-tag&market=us")
                        .words())
                .contains("One label");
        assertThat(client.get("/print?pieces=V99-999").words()).contains("There is no piece “V99-999” in this archive");
        assertThat(client.get("/print/preview.png?pieces=V99-999").status()).isEqualTo(404);
        assertThat(client.post("/print/issue", "kind", "hang-tag").status()).isEqualTo(303);
        assertThat(client.get("/print/preview.png").status()).isEqualTo(400);
        assertThat(client.get("/print/issued/none").status()).isEqualTo(404);
        assertThat(client.get("/print?pieces=V24-001&kind=banner&market=mars&sheet=a0")
                        .status())
                .isEqualTo(200);
        assertThat(issued()).isEmpty();
    }
}
