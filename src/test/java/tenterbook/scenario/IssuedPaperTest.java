package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;

/** Issued paper over HTTP: printed again, compared with today, asked for in a search; sheets of labels; many labels at once. */
class IssuedPaperTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        saved("/pieces", "number", "V24-001", "title", "Figueira", "category", "scarf", "made.0.clamping", "C24-001");
        saved("/pieces", "number", "V24-099", "title", "Found in a drawer", "category", "wall hanging");
    }

    private Answer issue(String... more) throws IOException {
        List<String> form = new ArrayList<>(List.of("pieces", "V24-001", "kind", "hang-tag", "market", "us"));
        form.addAll(List.of(more));
        Answer pdf = client.post("/print/issue", form.toArray(String[]::new));
        assertThat(pdf.status()).as(pdf.words()).isEqualTo(200);
        return pdf;
    }

    private IssuedPaper newest() {
        return wiring.archive().ledger().latest(Kinds.ISSUED_PAPER, 1).get(0).record();
    }

    private static String text(Answer pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.body())) {
            return new PDFTextStripper().getText(document);
        }
    }

    private String found(String search) throws IOException {
        return client.get("/?" + search).words();
    }

    @Test
    void whatKindOfPaperItIsStandsInTheLanguageOfThePage() throws IOException {
        issue();
        String page = "/print/issued/" + newest().id();
        assertThat(client.get(page).words()).contains("Hang tag, printed");
        assertThat(client.get(page, "Accept-Language", "pt").words())
                .contains("Etiqueta pendente, impresso")
                .doesNotContain("Hang tag", "hang-tag");
        assertThat(client.get("/print?pieces=V24-001", "Accept-Language", "pt").words())
                .doesNotContain("hang tag");
    }

    @Test
    void aTagIsPrintedAgainWordForWordHoweverTheRecordsChanged() throws IOException {
        Answer first = issue("showprice", "1", "arrangement", "selvedge");
        saved("/cloths/SH/edit", "version", "1", "name", "silk twill", "content.0.fibre", "silk", "wovenIn", "Italy");
        saved("/pieces/V24-001/edit", "version", "1", "title", "Another title", "made.0.clamping", "C24-001");
        Answer again = client.get("/print/issued/" + newest().id() + ".pdf");
        assertThat(again.header("Content-Type")).isEqualTo("application/pdf");
        assertThat(text(again)).isEqualTo(text(first)).contains("Figueira").contains("China");
        assertThat(again.body()).as("the same file").isEqualTo(first.body());
        Answer twice = client.get("/print/issued/" + newest().id() + ".pdf?copies=2");
        try (PDDocument document = Loader.loadPDF(twice.body())) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
        }
        assertThat(client.get("/print/issued/" + newest().id() + ".pdf?copies=many")
                        .status())
                .isEqualTo(400);
        assertThat(wiring.archive().ledger().count(Kinds.ISSUED_PAPER))
                .as("printing again keeps nothing new")
                .isEqualTo(1);
    }

    @Test
    void whatWouldReadDifferentlyTodayIsToldLineByLineAndIssuingAnewMarksWhatItReplaces() throws IOException {
        issue();
        String id = newest().id();
        assertThat(client.get("/print/issued/" + id).words()).contains("says what it would say today");
        assertThat(found("tag=us:current")).contains("V24-001").contains("1 piece");
        // A change that no tag shows leaves it as it was.
        saved(
                "/cloths/SH/edit",
                "version",
                "1",
                "name",
                "silk habotai",
                "content.0.fibre",
                "silk",
                "content.0.percent",
                "100",
                "wovenIn",
                "China",
                "notes",
                "a new supplier");
        assertThat(found("tag=us:current")).contains("1 piece");
        saved(
                "/cloths/SH/edit",
                "version",
                "2",
                "name",
                "silk habotai",
                "content.0.fibre",
                "silk",
                "content.0.percent",
                "100",
                "wovenIn",
                "India");
        String page = client.get("/print/issued/" + id).words();
        assertThat(page)
                .contains("would not read so today")
                .contains("woven in China")
                .contains("woven in India");
        assertThat(page).contains("origin").contains("the records changed").doesNotContain("the rules changed");
        assertThat(client.get("/pieces/V24-001").words())
                .contains("Printed papers")
                .contains("out of date")
                .contains("woven in India");
        assertThat(found("tag=us:out-of-date")).contains("1 piece").contains("US tag: out of date: origin");
        assertThat(found("tag=us:current")).contains("0 pieces");

        issue();
        assertThat(newest().replaces()).isEqualTo(id);
        assertThat(client.get("/print/issued/" + id).words())
                .contains("took its place")
                .contains("replaced by a newer one");
        assertThat(found("tag=us:current")).contains("1 piece");
    }

    @Test
    void whichPiecesLackALawfulTagIsOneSearchWithTheReason() throws IOException {
        assertThat(found("tag=us:lacking"))
                .contains("2 pieces")
                .contains("US: tag needed")
                .contains("US tag: cannot be made: Fibre content not recorded");
        assertThat(found("tag=us:cannot-be-made")).contains("1 piece").contains("V24-099");
        issue();
        assertThat(found("tag=us:lacking")).contains("1 piece").contains("V24-099");
        assertThat(found("tag=eu:lacking"))
                .as("another market asks for another tag")
                .contains("2 pieces");
        saved("/pieces/V24-099/edit", "version", "1", "title", "Found", "made.0.clamping", "C24-001");
        assertThat(found("tag=us:none-printed")).contains("1 piece").contains("V24-099");
        assertThat(client.get("/?tag=mars:lacking").status()).isEqualTo(400);
    }

    @Test
    void aChangeOfTheStudioIsSeenOnEveryTag() throws IOException {
        issue();
        assertThat(found("tag=us:current")).contains("1 piece");
        saved(
                "/studio",
                "name",
                "Oficina Nova",
                "place",
                "Porto Sarelho, Portugal",
                "dyedIn",
                "Portugal",
                "correction",
                "1",
                "version",
                "1");
        assertThat(found("tag=us:out-of-date")).contains("1 piece").contains("maker");
        assertThat(wiring.archive().ledger().count(Kinds.PIECE)).isEqualTo(2);
    }

    @Test
    void whatIsDerivedMayBeDeletedAndTheReasonsAreThereAtOnce() throws IOException {
        issue();
        assertThat(found("tag=us:current")).contains("1 piece");
        wiring.close();
        try (Stream<Path> files = Files.walk(around.resolve("studio").resolve("derived"))) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
        serve();
        assertThat(found("tag=us:lacking"))
                .contains("1 piece")
                .contains("US tag: cannot be made: Fibre content not recorded");
        assertThat(found("tag=us:current")).contains("V24-001").contains("US tag: current");
    }

    @Test
    void aSheetOfOnesOwnIsKeptMeasuredAndBegunInTheMiddle() throws IOException {
        assertThat(client.post("/print/sheets", "name", "tags", "widthMm", "210", "heightMm", "297")
                        .status())
                .isEqualTo(422);
        Answer tooWide = client.post("/print/sheets", sheet("columns", "4"));
        assertThat(tooWide.status()).isEqualTo(422);
        assertThat(tooWide.words()).contains("reach").contains("the paper has 210.0 by 297.0 mm");
        saved("/print/sheets", sheet("columns", "3"));
        assertThat(client.get("/print/sheets").words()).contains("3 × 3 labels of 55 × 90 mm");
        Answer test = client.get("/print/sheets/test.pdf?name=Market+tags");
        assertThat(text(test)).contains("Market tags").contains("50 mm across");

        String chosen = "/print?pieces=V24-001&kind=hang-tag&market=us&sheet=own:Market+tags";
        assertThat(client.get(chosen).words()).contains("of 9, row by row");
        assertThat(client.get(chosen + "&from=12").words()).contains("This sheet holds 9 labels");
        Answer fifth = issue("sheet", "own:Market tags", "from", "5");
        // The fifth of three columns is the middle one of the second row: 10 + 60 mm across, 8 + 92 mm down; its words
        // begin
        // 5.5 mm in. The printer strays, so all is sent 1.5 mm to the left and 0.5 % wider.
        assertThat(leftmost(fifth)).isCloseTo((70 + 5.5) * 1.005 - 1.5, within(0.3));
        assertThat(text(client.get("/print/issued/" + newest().id() + ".pdf"))).isEqualTo(text(fifth));

        saved("/print/sheets/withdraw", "name", "Market tags");
        assertThat(client.get(chosen).status()).isEqualTo(422);
        assertThat(client.get(chosen).words()).contains("There is no sheet “Market tags” any more");
        assertThat(text(client.get("/print/issued/" + newest().id() + ".pdf")))
                .as("the paper holds its sheet")
                .isEqualTo(text(fifth));
    }

    private static String[] sheet(String... more) {
        List<String> form = new ArrayList<>(List.of(
                "name",
                "Market tags",
                "widthMm",
                "210",
                "heightMm",
                "297",
                "rows",
                "3",
                "labelWidthMm",
                "55",
                "labelHeightMm",
                "90",
                "leftMm",
                "10",
                "topMm",
                "8",
                "columnGapMm",
                "5",
                "rowGapMm",
                "2",
                "shiftRightMm",
                "-1.5",
                "shiftDownMm",
                "0",
                "acrossPerMille",
                "5",
                "downPerMille",
                "0",
                "version",
                "0"));
        form.addAll(List.of(more));
        return form.toArray(String[]::new);
    }

    private static double leftmost(Answer pdf) throws IOException {
        double[] least = {1000};
        try (PDDocument document = Loader.loadPDF(pdf.body())) {
            new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    positions.forEach(p -> least[0] = Math.min(least[0], p.getXDirAdj() * 25.4 / 72));
                }
            }.getText(document);
        }
        return least[0];
    }

    @Test
    void manyLabelsAreWorkToWatchThatEndsWithTheFile() throws IOException {
        Answer going = client.post(
                "/print/issue", "pieces", "V24-001", "kind", "hang-tag", "market", "us", "copies", "60", "sheet", "a4");
        assertThat(going.status()).isEqualTo(303);
        Answer end = ended(going.location());
        assertThat(end.words()).contains("Open the PDF");
        String file = end.text().replaceAll("(?s).*href=\"(/print/issued/[^\"]*[.]pdf)\".*", "$1");
        try (PDDocument document = Loader.loadPDF(client.get(file).body())) {
            assertThat(document.getNumberOfPages()).as("six on a sheet").isEqualTo(10);
        }
    }

    @Test
    void aChoiceThatCannotBeIsToldAndNothingTypedIsLost() throws IOException {
        Answer page = client.get("/print?pieces=V24-001&kind=hang-tag&market=us&wide=wide&copies=3");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words())
                .contains("The width should be a number of millimetres")
                .doesNotContain("Make the PDF");
        assertThat(page.text()).contains("value=\"wide\"").contains("value=\"3\"");
        assertThat(client.get("/print?pieces=V24-001&kind=exhibition-label&sheet=roll")
                        .words())
                .contains("has no room on a roll 62 mm wide");
        assertThat(client.post("/print/issue", "pieces", "V24-001", "kind", "hang-tag", "wide", "300")
                        .status())
                .isEqualTo(303);
    }
}
