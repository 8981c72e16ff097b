package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentLines;
import tenterbook.documents.DocumentOrigin;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.issue.DocumentIssuer;
import tenterbook.documents.layout.DocumentPaper;
import tenterbook.ledger.Saved;
import tenterbook.piece.condition.Examination;

/** The condition report of a piece of the sample studio that came back from a loan. */
class ConditionReportTest {
    private static final DocumentSettings REQUEST = DocumentSettings.of(DocumentKind.CONDITION_REPORT);

    @TempDir
    static Path folder;

    private static SampleStudioDocuments studio;
    private static String front;
    private static byte[] pdf;

    @BeforeAll
    static void begin() throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        studio = new SampleStudioDocuments(folder);
        List<String> photos = studio.pieces("V24-013").get(0).record().photos().stream()
                .map(photo -> photo.photo().hex())
                .toList();
        front = photos.get(0);
        save("""
                {"id": "E24-081", "piece": "V24-013", "when": {"entered": "2024-03-14", "from": "2024-03-14", "to": "2024-03-14"},
                 "photos": [{"photo": "%1$s", "view": "front"}],
                 "observations": [
                   {"number": 1, "what": "stain", "zone": "front", "extent": {"entered": "8 mm", "low": 8, "high": 8, "unit": "millimetre"}},
                   {"number": 2, "what": "loose thread", "zone": "lower edge"},
                   {"number": 3, "what": "crease", "zone": "front"}]}
                """);
        save("""
                {"id": "E24-082", "piece": "V24-013", "when": {"entered": "2024-09-27", "from": "2024-09-27", "to": "2024-09-27"},
                 "reason": "on return", "place": "Oficina Valderim", "examiner": "Tomé Quarral", "means": "by eye, raking light",
                 "overall": "fair", "summary": "The stain has grown", "earlier": "E24-081",
                 "photos": [{"photo": "%1$s", "view": "front", "caption": "The whole hanging from three pegs"}],
                 "zones": [{"zone": "front", "seen": "examined"}, {"zone": "back", "seen": "not examined", "note": "still on its board"}],
                 "observations": [
                   {"number": 1, "what": "stain", "zone": "front", "extent": {"entered": "12 mm", "low": 12, "high": 12, "unit": "millimetre"},
                    "severity": "moderate", "standing": "worse", "marks": [{"photo": "%1$s", "left": 0.38, "top": 0.42}]},
                   {"number": 3, "what": "crease", "zone": "front", "standing": "gone"},
                   {"number": 4, "what": "snag", "zone": "right edge", "marks": [{"photo": "%1$s", "left": 0.8, "top": 0.2, "right": 0.9, "bottom": 0.3}]}],
                 "handling": "Two people; lift by the sleeve.", "packing": "Rolled face out.",
                 "handedOver": {"party": "museu-do-sarelho", "name": "R. Amieira"}, "received": {"name": "Tomé Quarral"}}
                """);
        pdf = printed(draft("E24-082"));
        if (System.getProperty("documents.write") != null) {
            Files.write(Path.of(System.getProperty("documents.write"), "condition-report.pdf"), pdf);
        }
    }

    @AfterAll
    static void end() {
        studio.close();
    }

    private static void save(String json) throws Exception {
        Examination examination = ExaminationRecord.EXAMINATION.fromText(json.formatted(front));
        studio.archive.ledger().write("test", act -> act.create(Kinds.EXAMINATION, examination));
    }

    private static DocumentDraft draft(String id) {
        Saved<Examination> saved =
                studio.archive.ledger().find(Kinds.EXAMINATION, id).orElseThrow();
        return ConditionReport.of(
                studio.archive, saved, studio.pieces("V24-013").get(0), REQUEST);
    }

    private static byte[] printed(DocumentDraft draft) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        DocumentPaper.pdf(
                List.of(draft.text()), draft.settings(), studio.photographs, out, SampleStudioDocuments.CLOCK);
        return out.toByteArray();
    }

    @Test
    void theReportIsArchivalAndAccessiblePdf() throws Exception {
        for (PDFAFlavour flavour : new PDFAFlavour[] {PDFAFlavour.PDFA_2_A, PDFAFlavour.PDFA_2_B}) {
            try (var parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
                    var validator = Foundries.defaultInstance().createValidator(flavour, false)) {
                ValidationResult result = validator.validate(parser);
                assertThat(result.isCompliant())
                        .as(result.getTestAssertions().toString())
                        .isTrue();
            }
        }
    }

    @Test
    void itTellsWhoSawWhatAndWhatChangedAndIsSilentWhereNothingWasSaid() throws Exception {
        String text;
        try (PDDocument document = Loader.loadPDF(pdf)) {
            text = new PDFTextStripper()
                    .getText(document)
                    .replace('\u00a0', ' ')
                    .replaceAll("\\s+", " ");
        }
        assertThat(text)
                .contains("Condition report", "V24-013 Socalco de amendoeiras", "E24-082, version 1")
                .contains("27 September 2024", "on return", "Tomé Quarral", "by eye, raking light")
                .contains("Fair. The stain has grown.")
                .contains("not examined; still on its board")
                .contains("extent 12 mm, was 8 mm")
                .contains("1 new, 1 worse, 1 gone, 1 not checked.")
                .contains("Handed over by R. Amieira, Museu do Sarelho, date and signature")
                .contains("Received by Tomé Quarral, date and signature")
                .contains("Light, showing not recorded")
                .contains("conservator");
        // The thread that the second examination does not speak of is not checked, and stands in no row of what was
        // seen.
        List<Block.Table> tables = draft("E24-082").text().parts().stream()
                .flatMap(part -> part.blocks().stream())
                .filter(Block.Table.class::isInstance)
                .map(Block.Table.class::cast)
                .toList();
        assertThat(tables.get(0).rows()).extracting(row -> row.cells().get(0)).containsExactly("1", "3", "4");
        assertThat(tables.get(1).rows())
                .extracting(row -> row.cells().get(0) + " " + row.cells().get(2))
                .containsExactly("1 worse", "2 not checked", "3 gone", "4 new");
    }

    @Test
    void everyMarkStandsOnItsPlaceOfThePhotographWithinAMillimetre() throws Exception {
        Sheet sheet = Sheet.withPicture(pdf);
        Sheet.Box picture = sheet.picture();
        assertThat(picture.width()).isGreaterThan(60);
        // 4 is marked over an area, so its number stands at the upper left corner of it.
        Map.of("1", new double[] {0.38, 0.42}, "4", new double[] {0.8, 0.2}).forEach((number, at) -> {
            Sheet.Glyph found = sheet.numbersOn(picture).get(number);
            assertThat(found).as("number %s on the picture", number).isNotNull();
            assertThat(found.middle()).isCloseTo(picture.left() + at[0] * picture.width(), within(0.5));
            assertThat(found.baseline() - 0.9).isCloseTo(picture.top() + at[1] * picture.height(), within(0.8));
        });
        assertThat(sheet.numbersOn(picture)).containsOnlyKeys("1", "4");
    }

    @Test
    void aMarkedAreaIsOutlinedOnThePhotographCornerByCorner() throws Exception {
        Sheet sheet = Sheet.withPicture(pdf);
        Sheet.Box picture = sheet.picture();
        // Once in white, once dark upon it; the point has none.
        assertThat(sheet.outlines()).hasSize(2).allSatisfy(outline -> {
            assertThat(outline.left()).isCloseTo(picture.left() + 0.8 * picture.width(), within(0.05));
            assertThat(outline.top()).isCloseTo(picture.top() + 0.2 * picture.height(), within(0.05));
            assertThat(outline.left() + outline.width())
                    .isCloseTo(picture.left() + 0.9 * picture.width(), within(0.05));
            assertThat(outline.top() + outline.height())
                    .isCloseTo(picture.top() + 0.3 * picture.height(), within(0.05));
        });
    }

    @Test
    void thePageOfThePhotographsLooksAsItWasApproved() throws Exception {
        byte[] png = DocumentPaper.png(pdf, Sheet.withPicture(pdf).number(), 40);
        if (System.getProperty("documents.write") != null) {
            Files.write(Path.of(System.getProperty("documents.write"), "condition-report.png"), png);
        }
        try (InputStream in = ConditionReportTest.class.getResourceAsStream("/documents/condition-report.png")) {
            BufferedImage golden = ImageIO.read(in);
            BufferedImage found = ImageIO.read(new ByteArrayInputStream(png));
            assertThat(unlike(golden, found)).isLessThan(0.005);
        }
        byte[] other = DocumentPaper.png(printed(draft("E24-081")), 1, 40);
        assertThat(unlike(ImageIO.read(new ByteArrayInputStream(other)), ImageIO.read(new ByteArrayInputStream(png))))
                .isGreaterThan(0.05);
    }

    /** The share of pixels that differ by more than a quarter of the scale in green. */
    private static double unlike(BufferedImage a, BufferedImage b) {
        assertThat(a.getWidth()).isEqualTo(b.getWidth());
        assertThat(a.getHeight()).isEqualTo(b.getHeight());
        int unlike = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                unlike += Math.abs((a.getRGB(x, y) >> 8 & 0xff) - (b.getRGB(x, y) >> 8 & 0xff)) > 64 ? 1 : 0;
            }
        }
        return unlike / (double) (a.getWidth() * a.getHeight());
    }

    @Test
    void issuedItIsKeptWordForWordWithTheVersionOfTheExamination() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        IssuedPaper paper = DocumentIssuer.print(
                        studio.archive,
                        List.of(draft("E24-082")),
                        "",
                        studio.photographs,
                        out,
                        SampleStudioDocuments.CLOCK,
                        "test")
                .get(0);
        assertThat(paper.kind()).isEqualTo("condition-report");
        assertThat(DocumentOrigin.of(paper)).isEqualTo(new DocumentOrigin(null, "E24-082", 1));
        assertThat(DocumentLines.read(paper)).isEqualTo(draft("E24-082").text());
        assertThat(studio.archive.papers().read(paper.pdf())).isEqualTo(out.toByteArray());
    }

    @Test
    void aReportWithoutPhotographOrExaminerSaysWhatItLacks() throws Exception {
        Examination bare = ExaminationRecord.EXAMINATION.fromText("{\"id\": \"E24-089\", \"piece\": \"V24-013\"}");
        studio.archive.ledger().write("test", act -> act.create(Kinds.EXAMINATION, bare));
        assertThat(draft("E24-089").text().words())
                .anyMatch(line -> line.startsWith("Missing: a photograph"))
                .contains("Missing: who examined it.", "Missing: the day of the examination.", "Not judged.")
                .contains("Nothing was noted.");
        Saved<Examination> other =
                studio.archive.ledger().find(Kinds.EXAMINATION, "E24-089").orElseThrow();
        assertThatThrownBy(() -> ConditionReport.of(
                        studio.archive, other, studio.pieces("V24-001").get(0), REQUEST))
                .hasMessageContaining("E24-089 is of V24-013 and not of V24-001");
    }
}
