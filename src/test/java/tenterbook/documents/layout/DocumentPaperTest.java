package tenterbook.documents.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;
import tenterbook.documents.Block;
import tenterbook.documents.DocumentSamples;
import tenterbook.documents.DocumentText;
import tenterbook.documents.DocumentTheme;
import tenterbook.documents.PageSize;
import tenterbook.documents.ReadBack;
import tenterbook.typeset.DoesNotFit;
import tenterbook.typeset.Mm;
import tenterbook.typeset.UnsupportedCharacter;

class DocumentPaperTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2024-06-01T10:00:00Z"), ZoneOffset.UTC);

    private static ReadBack printed(DocumentText text, PageSize page, DocumentTheme dress) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        DocumentPaper.pdf(List.of(text), page, dress, DocumentSamples.PHOTOGRAPHS, out, CLOCK);
        return new ReadBack(out.toByteArray());
    }

    private static DocumentText of(String title, List<Block> blocks) {
        return new DocumentText(
                "trial", "trial 1", title, "V24-003", "", List.of(new DocumentText.DocumentSection(null, blocks)));
    }

    private static String sentence(int number) {
        return "Sentence " + number
                + " tells of a cloth that was folded, clamped between two boards and put into the vat.";
    }

    @ParameterizedTest
    @EnumSource(PageSize.class)
    void everyBlockOnEveryPaperIsArchivalAndAccessible(PageSize page) throws Exception {
        DocumentTheme dress = page.widthMm() < 120 ? DocumentTheme.CARD : DocumentTheme.SHEET;
        ReadBack back = printed(DocumentSamples.everyBlock(), page, dress);
        for (PDFAFlavour flavour : new PDFAFlavour[] {PDFAFlavour.PDFA_2_A, PDFAFlavour.PDFA_2_B}) {
            ValidationResult result = back.checked(flavour);
            assertThat(result.isCompliant())
                    .as(result.getTestAssertions().toString())
                    .isTrue();
        }
    }

    @Test
    void theBenchDressIsArchivalAndAccessible() throws Exception {
        ValidationResult result = printed(DocumentSamples.everyBlock(), PageSize.A4, DocumentTheme.BENCH)
                .checked(PDFAFlavour.PDFA_2_A);
        assertThat(result.isCompliant())
                .as(result.getTestAssertions().toString())
                .isTrue();
    }

    @Test
    void theCheckerRefusesTheSameDocumentWithoutItsStructure() throws Exception {
        ReadBack good = printed(DocumentSamples.everyBlock(), PageSize.A4, DocumentTheme.SHEET);
        ByteArrayOutputStream spoilt = new ByteArrayOutputStream();
        try (PDDocument document = Loader.loadPDF(good.pdf())) {
            document.getDocumentCatalog().getCOSObject().removeItem(COSName.STRUCT_TREE_ROOT);
            document.save(spoilt);
        }
        assertThat(new ReadBack(spoilt.toByteArray())
                        .checked(PDFAFlavour.PDFA_2_A)
                        .isCompliant())
                .isFalse();
        ByteArrayOutputStream colourless = new ByteArrayOutputStream();
        try (PDDocument document = Loader.loadPDF(good.pdf())) {
            document.getDocumentCatalog().getCOSObject().removeItem(COSName.OUTPUT_INTENTS);
            document.save(colourless);
        }
        assertThat(new ReadBack(colourless.toByteArray())
                        .checked(PDFAFlavour.PDFA_2_B)
                        .isCompliant())
                .isFalse();
    }

    @Test
    void theSameDocumentAtTheSameTimeIsTheSameBytes() throws Exception {
        byte[] first = printed(DocumentSamples.everyBlock(), PageSize.A4, DocumentTheme.SHEET)
                .pdf();
        assertThat(printed(DocumentSamples.everyBlock(), PageSize.A4, DocumentTheme.SHEET)
                        .pdf())
                .isEqualTo(first);
    }

    /** Wherever the page ends: its first word and its last stand on one page. */
    @Test
    void aShortNoteIsNotDividedByAPage() throws Exception {
        int turned = 0;
        for (int before = 28; before < 48; before++) {
            List<Block> blocks = new ArrayList<>();
            for (int i = 0; i < before; i++) {
                blocks.add(new Block.Paragraph("Line"));
            }
            blocks.add(new Block.Note(
                    Block.Manner.NOTE,
                    "Begins. " + String.join(" ", sentence(1), sentence(2), sentence(3), sentence(4)) + " Ends."));
            blocks.add(new Block.Paragraph("After"));
            ReadBack back = printed(of("Note", blocks), PageSize.A4, DocumentTheme.SHEET);
            try (PDDocument document = Loader.loadPDF(back.pdf())) {
                PDFTextStripper first = new PDFTextStripper();
                first.setEndPage(1);
                String text = first.getText(document);
                assertThat(text.contains("Ends.")).as("after %d lines", before).isEqualTo(text.contains("Begins."));
                turned += text.contains("Begins.") ? 0 : 1;
            }
        }
        assertThat(turned).as("on both sides of the end of the page").isBetween(1, 19);
    }

    @Test
    void everyWordIsPrintedInItsOrderAndNoOther() throws Exception {
        DocumentText text = DocumentSamples.everyBlock();
        String printed = printed(text, PageSize.A4, DocumentTheme.SHEET).text().replace('\u00a0', ' ');
        for (String words : text.words()) {
            if (words.indexOf('\n') < 0) {
                assertThat(printed).containsIgnoringCase(words.replace('\u00a0', ' '));
            }
        }
        assertThat(printed.indexOf("Night of figs")).isLessThan(printed.indexOf("Distinguishing features"));
        assertThat(printed.indexOf("hem slightly frayed")).isLessThan(printed.indexOf("€450"));
    }

    @ParameterizedTest
    @EnumSource(PageSize.class)
    void pagesHaveTheirTrueSizeAndNothingStandsOutsideTheMargins(PageSize page) throws Exception {
        DocumentTheme dress = page.widthMm() < 120 ? DocumentTheme.CARD : DocumentTheme.SHEET;
        PageStyle type = PageStyle.of(dress, page, 1);
        ReadBack back = printed(DocumentSamples.everyBlock(), page, dress);
        try (PDDocument document = Loader.loadPDF(back.pdf())) {
            document.getPages().forEach(each -> {
                assertThat(Mm.of(each.getMediaBox().getWidth())).isCloseTo(page.widthMm(), within(0.01));
                assertThat(Mm.of(each.getMediaBox().getHeight())).isCloseTo(page.heightMm(), within(0.01));
            });
        }
        for (int number = 1; number <= back.pages(); number++) {
            assertThat(back.letters(number)).isNotEmpty().allSatisfy(letter -> {
                assertThat(letter.left()).isGreaterThan(type.left() - 0.6);
                assertThat(letter.right()).isLessThan(page.widthMm() - type.right() + 0.6);
                assertThat(letter.baseline()).isBetween(3.0, page.heightMm() - 3);
            });
        }
        assertThat(back.pictures()).isNotEmpty().allSatisfy(picture -> {
            assertThat(picture.left()).isGreaterThanOrEqualTo(type.left() - 0.01);
            assertThat(picture.left() + picture.width()).isLessThan(page.widthMm() - type.right() + 0.01);
            assertThat(picture.top() + picture.height()).isLessThan(type.floor() + 0.01);
            assertThat(picture.dpi()).isLessThan(205);
        });
    }

    @Test
    void headingsParagraphsTablesFiguresAndListsAreTold() throws Exception {
        ReadBack back = printed(DocumentSamples.everyBlock(), PageSize.A4, DocumentTheme.SHEET);
        assertThat(back.outline()).containsExactly("Night of figs", "  What is known", "  Pieces");
        assertThat(back.structure())
                .contains("Document", "H1", "H2", "H3", "P", "Table", "TR", "TH", "TD", "L", "LI", "Lbl", "LBody")
                .contains("Figure The front of the scarf", "Figure The weir", "Caption");
        assertThat(back.structure().stream().filter("H1"::equals)).hasSize(1);
    }

    @Test
    void everyPageSaysWhichItIsAndFurtherPagesSayOfWhat() throws Exception {
        List<Block> blocks = new ArrayList<>();
        IntStream.range(0, 80).forEach(i -> blocks.add(new Block.Paragraph(sentence(i))));
        ReadBack back = printed(of("A long tale", blocks), PageSize.A4, DocumentTheme.SHEET);
        assertThat(back.pages()).isGreaterThan(2);
        for (int page = 1; page <= back.pages(); page++) {
            assertThat(back.text(page))
                    .contains("page " + page + " of " + back.pages())
                    .contains("V24-003");
            assertThat(back.text(page)).contains("A long tale");
        }
    }

    @Test
    void noHeadingStandsAloneAtThePagesFoot() throws Exception {
        for (int before = 20; before < 60; before++) {
            List<Block> blocks = new ArrayList<>();
            for (int i = 0; i < before; i++) {
                blocks.add(new Block.Facts(List.of(new Block.Fact("Number", "fact " + i))));
            }
            blocks.add(new Block.Heading(2, "The heading"));
            blocks.add(new Block.Paragraph("What it heads."));
            ReadBack back = printed(of("Title", blocks), PageSize.A5, DocumentTheme.SHEET);
            for (int page = 1; page <= back.pages(); page++) {
                assertThat(back.text(page).contains("The heading"))
                        .as("with %d facts, page %d", before, page)
                        .isEqualTo(back.text(page).contains("What it heads."));
            }
        }
    }

    @Test
    void aTablesHeadStandsOnEachOfItsPages() throws Exception {
        List<Block.TableRow> rows = IntStream.range(0, 90)
                .mapToObj(i ->
                        new Block.TableRow(i % 3 == 0 ? DocumentSamples.ACROSS : null, List.of("piece " + i, "€" + i)))
                .toList();
        Block table = new Block.Table(
                List.of(new Block.Column("The piece", 3, false), new Block.Column("Its value", 1, true)), rows);
        ReadBack back = printed(of("Title", List.of(table)), PageSize.A4, DocumentTheme.SHEET);
        assertThat(back.pages()).isGreaterThan(1);
        for (int page = 1; page <= back.pages(); page++) {
            assertThat(back.text(page)).contains("The piece", "Its value");
        }
        IntStream.range(0, 90).forEach(i -> {
            try {
                assertThat(back.text()).contains("piece " + i + " ");
            } catch (java.io.IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
        assertThat(back.structure().stream().filter("TR"::equals)).hasSize(91);
        assertThat(back.checked(PDFAFlavour.PDFA_2_A).isCompliant()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 40, 300})
    void aTitleOfAnyLengthIsPrintedWhole(int length) throws Exception {
        String title = "Flussdampfschiffsgesellschaftsleinen "
                .repeat(9)
                .substring(0, length)
                .strip();
        String unbroken = "Ümlaut".repeat(50).substring(0, length);
        Block.Fact fact = new Block.Fact("Name", unbroken);
        List<Block> blocks = List.of(
                new Block.Heading(1, title),
                new Block.Facts(List.of(fact)),
                new Block.Entry(DocumentSamples.ACROSS, "", unbroken, List.of(fact)),
                new Block.Table(
                        List.of(new Block.Column("A", 1, false), new Block.Column("B", 3, true)),
                        List.of(new Block.TableRow(null, List.of(unbroken, title)))));
        for (PageSize page : PageSize.values()) {
            ReadBack back =
                    printed(of(title, blocks), page, page.widthMm() < 120 ? DocumentTheme.CARD : DocumentTheme.SHEET);
            String together = back.text().replaceAll("[ \u00ad\u2010-]", "");
            String bare = title.replaceAll("[ -]", "");
            assertThat(together).contains(bare).contains(unbroken);
            for (int number = 1; number <= back.pages(); number++) {
                assertThat(back.letters(number))
                        .allMatch(letter -> letter.right() < page.widthMm() && letter.left() > 0);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"نسيج أزرق", "אריג כחול", "Fig \uD83C\uDF43", "a\u0000b", "e\u0301\u0300"})
    void whatCannotBeSetIsRefusedWithItsWords(String title) {
        assertThatThrownBy(() -> printed(of(title, List.of()), PageSize.A4, DocumentTheme.SHEET))
                .isInstanceOf(UnsupportedCharacter.class)
                .hasMessageContaining("Write it another way");
        assertThatThrownBy(() -> printed(
                        of("Title", List.of(new Block.Facts(List.of(new Block.Fact("Name", title))))),
                        PageSize.A4,
                        DocumentTheme.SHEET))
                .isInstanceOf(UnsupportedCharacter.class);
    }

    /** Measured anew for each of its lines, such a word took gigabytes. */
    @Test
    void aWordAsLongAsABookIsPrintedWhole() throws Exception {
        String word = "Ümlaut".repeat(30_000);
        ReadBack back = printed(of("Long", List.of(new Block.Paragraph(word))), PageSize.A4, DocumentTheme.SHEET);
        assertThat(back.text().chars().filter(letter -> letter == 'Ü').count()).isEqualTo(30_000);
    }

    @Test
    void aPhotographThatIsNotThereIsSaidToBeSo() throws Exception {
        Block photo = new Block.Photograph(
                new tenterbook.measure.Digest("ef".repeat(32)), Block.Extent.WHOLE, "Front", "Front", List.of());
        ReadBack back = printed(of("Title", List.of(photo)), PageSize.A4, DocumentTheme.SHEET);
        assertThat(back.text()).contains("efefefefefef").contains("kept but not shown");
        assertThat(back.checked(PDFAFlavour.PDFA_2_A).isCompliant()).isTrue();
    }

    @Test
    void aWallTextIsOnePageWithALargeTitleOrIsRefusedWithTheWordsLeftOver() throws Exception {
        List<Block> blocks = new ArrayList<>();
        IntStream.range(0, 5).forEach(i -> blocks.add(new Block.Paragraph(sentence(i))));
        ReadBack back = printed(of("Nove andorinhões", blocks), PageSize.A5, DocumentTheme.WALL);
        assertThat(back.pages()).isEqualTo(1);
        assertThat(back.letters(1).stream()
                        .filter(letter -> letter.text().equals("N"))
                        .findFirst())
                .hasValueSatisfying(letter -> assertThat(letter.size()).isGreaterThanOrEqualTo(18));
        IntStream.range(5, 60).forEach(i -> blocks.add(new Block.Paragraph(sentence(i))));
        assertThatThrownBy(() -> printed(of("Nove andorinhões", blocks), PageSize.A5, DocumentTheme.WALL))
                .isInstanceOf(DoesNotFit.class)
                .hasMessageContaining("Sentence 59");
    }

    @Test
    void severalDocumentsInOneFileCountTheirPagesEachByItself() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        DocumentPaper.pdf(
                List.of(of("First", List.of(new Block.Paragraph("One."))), of("Second", List.of())),
                PageSize.A4,
                DocumentTheme.SHEET,
                DocumentSamples.PHOTOGRAPHS,
                out,
                CLOCK);
        ReadBack back = new ReadBack(out.toByteArray());
        assertThat(back.text(1)).contains("First", "page 1 of 1");
        assertThat(back.text(2)).contains("Second", "page 1 of 1");
    }
}
