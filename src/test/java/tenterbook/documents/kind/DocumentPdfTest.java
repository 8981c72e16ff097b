package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentDraft;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.PageSize;
import tenterbook.documents.ReadBack;

/** Every document of the sample studio as it is printed. */
class DocumentPdfTest {
    @TempDir
    static Path folder;

    private static SampleStudioDocuments studio;

    @BeforeAll
    static void begin() throws Exception {
        studio = new SampleStudioDocuments(folder);
    }

    @AfterAll
    static void end() {
        studio.close();
    }

    @ParameterizedTest
    @EnumSource(value = DocumentKind.class, names = "CONDITION_REPORT", mode = EnumSource.Mode.EXCLUDE)
    void everyDocumentIsArchivalAndAccessiblePdf(DocumentKind kind) throws Exception {
        ReadBack back = new ReadBack(studio.pdf(kind));
        for (PDFAFlavour flavour : new PDFAFlavour[] {PDFAFlavour.PDFA_2_A, PDFAFlavour.PDFA_2_B}) {
            ValidationResult result = back.checked(flavour);
            assertThat(result.isCompliant())
                    .as(result.getTestAssertions().toString())
                    .isTrue();
        }
    }

    @ParameterizedTest
    @EnumSource(value = DocumentKind.class, names = "CONDITION_REPORT", mode = EnumSource.Mode.EXCLUDE)
    void everyWordOfTheDocumentIsOnThePaper(DocumentKind kind) throws Exception {
        List<DocumentDraft> drafts = studio.drafts(kind);
        String printed = new ReadBack(studio.pdf(kind)).text().replaceAll("[\\s\u00a0]", "");
        for (String words : drafts.get(0).text().words()) {
            if (words.indexOf('\n') < 0) {
                assertThat(printed).containsIgnoringCase(words.replaceAll("[\\s\u00a0]", ""));
            }
        }
    }

    @ParameterizedTest
    @EnumSource(value = DocumentKind.class, names = "CONDITION_REPORT", mode = EnumSource.Mode.EXCLUDE)
    void everyPieceOfTheSampleHasEveryDocumentOnEveryPaper(DocumentKind kind) throws Exception {
        String[] all = studio.archive
                .ledger()
                .allIdsEverUsed(tenterbook.archive.Kinds.PIECE)
                .toArray(String[]::new);
        for (PageSize page : kind.pages()) {
            DocumentSettings request = SampleStudioDocuments.request(kind).on(page);
            List<DocumentDraft> drafts =
                    Composition.of(studio.archive, studio.pieces(all), request, SampleStudioDocuments.TODAY);
            assertThat(drafts).hasSize(kind.each() ? all.length : 1);
            assertThat(new ReadBack(studio.pdf(drafts, request)).pages()).isGreaterThanOrEqualTo(drafts.size());
        }
    }

    @Test
    void aCardIsOneCard() throws Exception {
        assertThat(new ReadBack(studio.pdf(DocumentKind.ARCHIVE_CARD)).pages()).isEqualTo(1);
    }

    @Test
    void thePictureOfAnObjectIdSheetTakesHalfTheHeightOfItsText() throws Exception {
        Sheet sheet = Sheet.withPicture(studio.pdf(DocumentKind.OBJECT_ID));
        assertThat(sheet.number()).isEqualTo(1);
        assertThat(sheet.picture().height()).isGreaterThan((297 - 19 - 22) / 2.0 - 0.1);
    }

    /** V24-004 is 104 cm long and 86 cm wide; the bar says how much of that it is. */
    @Test
    void theScaleBarMeasuresTheClothBelowIt() throws Exception {
        Block.Photograph photo = firstPhotograph("V24-004");
        assertThat(photo.scale()).isNotNull();
        double wideMm = 10
                * Double.parseDouble(photo.scale().length().replace("\u00a0cm", ""))
                / photo.scale().part();
        // As measured on the photograph by hand: the cloth takes 0.83 of the picture's width.
        assertThat(wideMm * 0.83).isCloseTo(860, withinPercentage(5));
        Sheet sheet = Sheet.withPicture(studio.pdf(DocumentKind.OBJECT_ID));
        assertThat(sheet.outlines()).anySatisfy(box -> {
            assertThat(box.width())
                    .isCloseTo(photo.scale().part() * sheet.picture().width(), within(0.2));
            assertThat(box.top())
                    .isGreaterThan(sheet.picture().top() + sheet.picture().height());
        });
    }

    @Test
    void anObjectIdSheetHasABarOrTheWordsThatTheScaleIsNotKnown() {
        int barred = 0;
        for (int i = 1; i <= 23; i++) {
            String number = "V24-%03d".formatted(i);
            Block.Photograph photo = firstPhotograph(number);
            assertThat(photo.caption().contains("The scale of this photograph is not known. Recorded size: "))
                    .as(number)
                    .isEqualTo(photo.scale() == null);
            barred += photo.scale() == null ? 0 : 1;
        }
        // V24-012 lies with a part of its edge hidden.
        assertThat(barred).isEqualTo(22);
    }

    private static Block.Photograph firstPhotograph(String number) {
        return Composition.of(
                        studio.archive,
                        studio.pieces(number),
                        SampleStudioDocuments.request(DocumentKind.OBJECT_ID),
                        SampleStudioDocuments.TODAY)
                .get(0)
                .text()
                .parts()
                .get(0)
                .blocks()
                .stream()
                .filter(Block.Photograph.class::isInstance)
                .map(Block.Photograph.class::cast)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aUsualCertificateIsOnePageWithItsSignatureAndItsCode() throws Exception {
        ReadBack back = new ReadBack(studio.pdf(DocumentKind.PROVENANCE_CERTIFICATE));
        assertThat(back.pages()).isEqualTo(1);
        assertThat(back.text(1)).contains("place, date", "The first 16 digits");
    }

    @Test
    void thePhotographsOfAnObjectIdSheetStandTogetherOnItsFirstPage() throws Exception {
        DocumentSettings request = SampleStudioDocuments.request(DocumentKind.OBJECT_ID);
        List<DocumentDraft> drafts =
                Composition.of(studio.archive, studio.pieces("V24-003"), request, SampleStudioDocuments.TODAY);
        ReadBack back = new ReadBack(studio.pdf(drafts, request));
        assertThat(back.pictures()).hasSize(3);
        assertThat(back.text(1)).contains("Front.", "Back.", "Detail.");
        assertThat(back.pages()).isEqualTo(2);
    }

    @Test
    void signaturesStandWithTheTermsTheySign() throws Exception {
        DocumentSettings request = SampleStudioDocuments.request(DocumentKind.LOAN_SCHEDULE);
        List<DocumentDraft> drafts =
                Composition.of(studio.archive, studio.pieces("V24-005"), request, SampleStudioDocuments.TODAY);
        ReadBack back = new ReadBack(studio.pdf(drafts, request));
        assertThat(back.text(back.pages())).contains("For the borrower", "The pieces hang together");
    }

    /** A page of a signature and a code alone would show nothing of what is signed. */
    @Test
    void aSignatureStandsWithTheFactsAlsoWhereItsCodeTakesAnotherPage() throws Exception {
        ReadBack back;
        String text = "";
        do {
            text +=
                    "It hung in the north room, over the long bench, for the whole of that winter and the spring after.\n";
            DocumentSettings request = new DocumentSettings(
                    DocumentKind.PROVENANCE_CERTIFICATE,
                    null,
                    null,
                    new DocumentSettings.Disclosure(true, true, false),
                    text);
            back = new ReadBack(studio.pdf(
                    Composition.of(studio.archive, studio.pieces("V24-002"), request, SampleStudioDocuments.TODAY),
                    request));
        } while (back.pages() == 1);
        assertThat(back.text(1)).contains("The maker states", "place, date");
        assertThat(back.text(2)).contains("The first 16 digits");
    }

    @Test
    void severalStepsStandOnAPageOfTheBenchSheet() throws Exception {
        DocumentSettings request = SampleStudioDocuments.request(DocumentKind.BENCH_SHEET);
        List<DocumentDraft> drafts =
                Composition.of(studio.archive, studio.pieces("V24-002"), request, SampleStudioDocuments.TODAY);
        ReadBack back = new ReadBack(studio.pdf(drafts, request));
        assertThat(back.pages()).isLessThanOrEqualTo(5);
        for (int page = 2; page <= back.pages(); page++) {
            assertThat(back.text(page).split("Done today", -1))
                    .as("steps on page " + page)
                    .hasSizeGreaterThan(2);
        }
    }

    @Test
    void photographsOfTheSampleAreSharpOnPaper() throws Exception {
        assertThat(new ReadBack(studio.pdf(DocumentKind.OBJECT_ID)).pictures())
                .hasSize(2)
                .allSatisfy(picture -> assertThat(picture.dpi()).isBetween(190.0, 205.0));
    }
}
