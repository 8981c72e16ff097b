package tenterbook.labelling.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collections;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LabelBlocked;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Category;
import tenterbook.piece.PieceNumber;
import tenterbook.typeset.DoesNotFit;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfDocument.Box;
import tenterbook.typeset.UnsupportedCharacter;

class LabelPaperTest {
    private static final PrintSettings TAG = PrintSettings.of(LabelKind.HANG_TAG, Market.EU);

    @ParameterizedTest
    @EnumSource(LabelKind.class)
    void everyLineOfTheWordsStandsOnThePaperAndNoOther(LabelKind kind) throws Exception {
        PrintSettings request = PrintSettings.of(kind, Market.US).withPrice();
        String printed = Printed.of(request, Samples.kasuri()).text();
        String rest = printed.replace(" ", "").replace("·", "");
        for (LabelText.Line line : LabelText.of(Samples.kasuri(), request).lines()) {
            String plain = line.text().replaceAll("[\\s\u00a0·]", "");
            assertThat(rest).contains(plain);
            rest = rest.replaceFirst(Pattern.quote(plain), "");
        }
        for (String heading : List.of("Materials", "Making", "Condition", "Lightandhandling")) {
            rest = kind.statesCondition() ? rest.replaceFirst("(?i)" + heading, "") : rest;
        }
        assertThat(rest).isEqualTo(TestBar.WORDS.replace(" ", ""));
        if (kind.statesFibres()) {
            assertThat(printed).contains("Oficina Valderim");
        }
    }

    @ParameterizedTest
    @EnumSource(LabelKind.class)
    void theLabelIsOfTrueSizeAndItsTestBarMeasuresFiftyMillimetres(LabelKind kind) throws Exception {
        Printed printed = Printed.of(PrintSettings.of(kind, Market.EU), Samples.kasuri());
        try (PDDocument document = Loader.loadPDF(printed.bytes())) {
            PDRectangle trim = document.getPage(0).getTrimBox();
            assertThat(Mm.of(trim.getWidth())).isCloseTo(kind.widthMm(), within(0.01));
            assertThat(Mm.of(trim.getHeight())).isCloseTo(kind.heightMm(), within(0.01));
            assertThat(printed.strokes(1))
                    .filteredOn(s -> Math.abs(s.length() - 50) < 1)
                    .singleElement()
                    .satisfies(bar -> {
                        assertThat(bar.length()).isCloseTo(50, within(0.1));
                        assertThat(bar.y1()).isLessThan(Mm.of(trim.getLowerLeftY()));
                    });
        }
        assertThat(printed.text()).contains("This bar measures 50 mm when printed at 100 %");
    }

    @ParameterizedTest
    @EnumSource(LabelKind.class)
    void nothingStandsNearOrOverTheEdgeOfTheLabel(LabelKind kind) throws Exception {
        PrintSettings request = PrintSettings.of(kind, Market.US).withPrice();
        Printed printed = Printed.of(request, Samples.heron());
        Box box = Sheet.of(request).boxes().get(0);
        assertThat(printed.letters(1))
                .filteredOn(l -> l.baseline() < box.y() + box.height())
                .isNotEmpty()
                .allSatisfy(l -> {
                    assertThat(l.left()).isGreaterThan(box.x() + 2.5);
                    assertThat(l.right()).isLessThan(box.x() + box.width() - 2.5);
                    assertThat(l.baseline()).isBetween(box.y() + 3, box.y() + box.height() - 2.5);
                    assertThat(l.size()).isGreaterThanOrEqualTo(5.99);
                });
        double scale = 300 / 25.4;
        BufferedImage image = printed.image(1, 300);
        for (double off : new double[] {-1.5, -0.5, 0.5}) {
            for (double x = box.x() - off; x <= box.x() + box.width() + off; x += 0.08) {
                white(image, x * scale, (box.y() - off) * scale);
                white(image, x * scale, (box.y() + box.height() + off) * scale);
            }
            for (double y = box.y() - off; y <= box.y() + box.height() + off; y += 0.08) {
                white(image, (box.x() - off) * scale, y * scale);
                white(image, (box.x() + box.width() + off) * scale, y * scale);
            }
        }
    }

    private static void white(BufferedImage image, double x, double y) {
        assertThat(image.getRGB((int) x, (int) y) & 0xffffff).isEqualTo(0xffffff);
    }

    @Test
    void theSquareCodeIsReadFromAThreeHundredDpiPrint() throws Exception {
        assertThat(code(Samples.kasuri(), TAG)).isEqualTo("V24-005\nHeron weir\nOficina Valderim");
        PieceFacts accented =
                Samples.facts(Samples.piece("V24-014", "Socalcos da amendoeira 板締め絞り", "", Category.SCARF, List.of()));
        assertThat(code(accented, TAG)).isEqualTo("V24-014\nSocalcos da amendoeira 板締め絞り\nOficina Valderim");
        PieceFacts wordy = Samples.facts(Samples.piece(
                "V24-014",
                "The almond terrace after rain, looking towards the weir at dusk",
                "",
                Category.SCARF,
                List.of()));
        assertThat(code(wordy, TAG)).isEqualTo("V24-014\nOficina Valderim");
    }

    private static String code(PieceFacts facts, PrintSettings request) throws Exception {
        BufferedImage image = Printed.of(request, facts).image(1, 300);
        return new QRCodeReader()
                .decode(new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(image))))
                .getText();
    }

    @Test
    void theBlankZoneRoundTheSquareCodeIsKept() throws Exception {
        PrintSettings request = TAG;
        Box box = Sheet.of(request).boxes().get(0);
        BufferedImage image = Printed.of(request, Samples.heron()).image(1, 600);
        double scale = 600 / 25.4;
        double quiet = new SquareCode(LabelText.of(Samples.heron(), request).code()).quietMm(14);
        double left = box.x() + 55 - 5.5 - 14;
        double top = box.y() + 90 - 5.5 - 14;
        assertThat(quiet).isGreaterThan(1.5);
        for (double t = -quiet + 0.1; t < 14 + quiet - 0.1; t += 0.1) {
            for (double d = 0.1; d < quiet - 0.1; d += 0.1) {
                white(image, (left - d) * scale, (top + t) * scale);
                white(image, (left + 14 + d) * scale, (top + t) * scale);
                white(image, (left + t) * scale, (top - d) * scale);
                white(image, (left + t) * scale, (top + 14 + d) * scale);
            }
        }
    }

    @Test
    void severalLabelsLieOnASheetWithTheirCutMarks() throws Exception {
        PieceFacts[] eight = Collections.nCopies(8, Samples.heron()).toArray(PieceFacts[]::new);
        Printed a4 = Printed.of(TAG.on(SheetSize.A4), eight);
        try (PDDocument document = Loader.loadPDF(a4.bytes())) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            assertThat(Mm.of(document.getPage(0).getMediaBox().getWidth())).isCloseTo(210, within(0.01));
            assertThat(Mm.of(document.getPage(0).getMediaBox().getHeight())).isCloseTo(297, within(0.01));
        }
        Sheet sheet = Sheet.of(TAG.on(SheetSize.A4));
        assertThat(sheet.boxes()).hasSize(6);
        double leftMargin = sheet.boxes().get(0).x();
        double rightMargin = 210 - sheet.boxes().get(2).x() - 55;
        assertThat(leftMargin).isCloseTo(rightMargin, within(0.001));
        assertThat(a4.strokes(1)).filteredOn(Printed.Stroke::isMark).hasSize(6 * 8);
        assertThat(a4.strokes(2)).filteredOn(Printed.Stroke::isMark).hasSize(2 * 8);
        assertThat(a4.strokes(2))
                .filteredOn(s -> Math.abs(s.length() - 50) < 0.1)
                .hasSize(1);
        try (PDDocument letter =
                Loader.loadPDF(Printed.of(TAG.on(SheetSize.LETTER), eight).bytes())) {
            assertThat(letter.getPage(0).getMediaBox().getWidth()).isCloseTo(612, within(0.01f));
            assertThat(letter.getPage(0).getMediaBox().getHeight()).isCloseTo(792, within(0.01f));
        }
    }

    @Test
    void theSameLabelAtTheSameInstantIsTheSameBytes() throws Exception {
        assertThat(Printed.of(TAG, Samples.kasuri()).bytes())
                .isEqualTo(Printed.of(TAG, Samples.kasuri()).bytes());
    }

    @Test
    void whatHasNoRoomIsRefusedWithItsWordsAndNothingIsWritten() {
        PieceFacts endless = Samples.facts(
                Samples.piece("V24-014", "The almond terrace ".repeat(12), "", Category.SCARF, List.of()));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThatThrownBy(() -> LabelPaper.pdf(List.of(endless), TAG, out, Printed.CLOCK, Progress.UNWATCHED))
                .isInstanceOf(DoesNotFit.class)
                .hasMessageContainingAll("Piece V24-014", "title", "almond terrace", "Shorten");
        assertThat(out.size()).isZero();
    }

    @Test
    void aTitleThatCannotBeSetNamesThePieceAndTheCharacter() {
        PieceFacts hebrew = Samples.facts(Samples.piece("V24-014", "Heron שלום", "", Category.SCARF, List.of()));
        assertThatThrownBy(() -> Printed.of(TAG, hebrew))
                .isInstanceOf(UnsupportedCharacter.class)
                .hasMessageContainingAll("V24-014", "right to left", "U+05E9");
        PieceFacts bird = Samples.facts(Samples.piece("V24-014", "Heron \uD83D\uDC26", "", Category.SCARF, List.of()));
        assertThatThrownBy(() -> Printed.of(TAG, bird))
                .isInstanceOf(UnsupportedCharacter.class)
                .hasMessageContaining("U+1F426");
    }

    @Test
    void blockedPiecesAreAllNamedAndTheExhibitionLabelNeedsNoFibres() throws Exception {
        PieceFacts bare = Samples.alone(Samples.STUDIO, Samples.piece("V24-030", "", "", Category.SCARF, List.of()));
        PieceFacts other = Samples.with(bare, Samples.piece("V24-031", "", "", Category.SCARF, List.of()), List.of());
        assertThatThrownBy(() -> Printed.of(TAG, bare, Samples.heron(), other))
                .isInstanceOfSatisfying(
                        LabelBlocked.class,
                        e -> assertThat(e.pieces())
                                .extracting(LabelBlocked.Piece::number)
                                .containsExactly(new PieceNumber("V24-030"), new PieceNumber("V24-031")))
                .hasMessageContaining("Fibre content not recorded");
        assertThat(Printed.of(PrintSettings.of(LabelKind.EXHIBITION_LABEL, Market.EU), bare)
                        .text())
                .contains("Title not recorded", "Cloth not recorded", "How it was made is not recorded.");
    }

    @Test
    void aStoppedJobWritesNothing() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<PieceFacts> many = Collections.nCopies(5, Samples.heron());
        long[] reached = new long[2];
        Progress stopping = new Progress() {
            @Override
            public void at(long done, long total, String what) {
                reached[0] = done;
                reached[1] = total;
            }

            @Override
            public boolean cancelled() {
                return reached[0] == 2;
            }
        };
        // Long work is shown as stopped by this and no other exception.
        assertThatThrownBy(() -> LabelPaper.pdf(many, TAG, out, Printed.CLOCK, stopping))
                .isInstanceOf(Progress.Cancelled.class);
        assertThat(reached).containsExactly(2, 5);
        assertThat(out.size()).isZero();
    }

    @Test
    void theTitleOnAnExhibitionLabelIsNeverUnderEighteenPoints() throws Exception {
        PieceFacts wordy = Samples.facts(Samples.piece(
                "V24-014",
                "Almond terrace after the rain, looking down towards the salt pans and the weir, second cutting",
                "",
                Category.WALL_HANGING,
                List.of()));
        assertThat(Printed.of(PrintSettings.of(LabelKind.EXHIBITION_LABEL, Market.EU), wordy)
                        .letters(1))
                .filteredOn(l -> l.size() >= 17.99)
                .extracting(Printed.Letter::text)
                .contains("A");
    }

    @Test
    void previewsMadeAtOnceDoNotDisturbOneAnother() throws Exception {
        byte[] expected = LabelPaper.face(Samples.kasuri(), TAG, 60);
        List<Integer> jobs = IntStream.range(0, 12).boxed().toList();
        assertThat(jobs.parallelStream().map(job -> {
                    try {
                        return LabelPaper.face(Samples.kasuri(), TAG, 60);
                    } catch (IOException e) {
                        throw new UncheckedIOException("preview " + job, e);
                    }
                }))
                .allSatisfy(png -> assertThat(png).isEqualTo(expected));
    }

    @Test
    void wordsKeptWhenIssuedPrintTheSameLabelAgain() throws Exception {
        LabelText kept = LabelText.of(Samples.kasuri(), TAG);
        assertThat(kept.rules()).containsExactly(Market.EU.rules().version());
        assertThat(kept.template()).isEqualTo("tag 3");
        ByteArrayOutputStream again = new ByteArrayOutputStream();
        LabelPaper.print(List.of(kept), TAG, again, Printed.CLOCK, Progress.UNWATCHED);
        assertThat(again.toByteArray())
                .isEqualTo(Printed.of(TAG, Samples.kasuri()).bytes());
    }

    @Test
    void aTagWithoutTheWholeContentPointsToTheLabelInTheStates() throws Exception {
        PieceFacts blend = Samples.with(
                Samples.heron(),
                Samples.heron().piece(),
                List.of(Samples.cloth(
                        "silk organza", "India", Samples.share("silk", 80.0), Samples.share("cotton", 20.0))));
        PrintSettings request = new PrintSettings(
                LabelKind.HANG_TAG, Market.US, null, new PrintSettings.Content(false, false, false), null, null);
        assertThat(Printed.of(request, blend).text())
                .contains("Silk organza", "See label for the product's full fiber content.")
                .doesNotContain("80%");
        assertThat(Printed.of(request, Samples.heron()).text()).doesNotContain("See label");
    }

    @Test
    void aTapeNarrowerThanItsWordsIsRefused() throws Exception {
        PrintSettings narrow = PrintSettings.of(LabelKind.CARE_LABEL, Market.EU).sized(25, 30);
        assertThatThrownBy(() -> Printed.of(narrow, Samples.kasuri())).isInstanceOf(DoesNotFit.class);
        assertThatThrownBy(() -> narrow.sized(20, 40)).isInstanceOf(IllegalArgumentException.class);
        assertThat(Printed.of(narrow.sized(25, 80), Samples.kasuri()).text()).contains("100 % linen");
    }

    @Test
    void blackOnlyPrintsNoColour() throws Exception {
        BufferedImage image = Printed.of(TAG.inBlack(), Samples.heron()).image(1, 100);
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                assertThat(rgb >> 16 & 0xff).isEqualTo(rgb & 0xff).isEqualTo(rgb >> 8 & 0xff);
            }
        }
    }
}
