package tenterbook.labelling.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.archive.record.LabelSheet;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.rule.Market;
import tenterbook.typeset.Mm;

/** Where labels lie, read back from the file in millimetres from the page's upper left corner. */
class SheetTest {
    private static final PrintSettings TAG = PrintSettings.of(LabelKind.HANG_TAG, Market.EU);
    private static final LabelSheet STRAIGHT = sheet(0, 0, 0, 0);

    private static LabelSheet sheet(double right, double down, double across, double tall) {
        return new LabelSheet("Market tags", 210, 297, 3, 3, 55, 90, 10, 8, 5, 2, right, down, across, tall);
    }

    /** Where the word that names the maker begins: the first letters of the first line. */
    private static Printed.Letter first(PrintSettings request, int page, PieceFacts... facts) throws Exception {
        return Printed.of(request, facts).letters(page).stream()
                .filter(letter -> letter.text().startsWith("O"))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"1, 0, 0", "2, 1, 0", "3, 2, 0", "4, 0, 1", "9, 2, 2"})
    void aHalfUsedSheetGoesOnFromAnyPlace(int place, int column, int row) throws Exception {
        Printed.Letter at = first(Samples.on(TAG, STRAIGHT).startingAt(place), 1, Samples.heron());
        Printed.Letter first = first(Samples.on(TAG, STRAIGHT), 1, Samples.heron());
        assertThat(first.left()).isBetween(10 + 5.0, 10 + 6.5);
        assertThat(first.baseline()).isBetween(8 + 12.0, 8 + 16.0);
        assertThat(at.left() - first.left()).isCloseTo(column * 60, within(0.01));
        assertThat(at.baseline() - first.baseline()).isCloseTo(row * 92, within(0.01));
    }

    @Test
    void aSheetBegunInTheMiddleGoesOnOnTheNextAtItsFirstPlace() throws Exception {
        PrintSettings request = Samples.on(TAG, STRAIGHT).startingAt(8).times(3);
        Printed printed = Printed.of(request, Samples.heron());
        try (PDDocument document = Loader.loadPDF(printed.bytes())) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
        }
        List<Double> lefts = printed.letters(1).stream()
                .filter(letter -> letter.text().startsWith("O") && letter.size() > 7)
                .map(Printed.Letter::left)
                .toList();
        assertThat(lefts).hasSize(2);
        assertThat(printed.letters(2)).filteredOn(letter -> letter.left() > 70).isEmpty();
        assertThatThrownBy(() -> Printed.of(request.startingAt(10), Samples.heron()))
                .hasMessageContainingAll("holds 9 labels", "place 10");
    }

    @Test
    void theCorrectionMovesAndStretchesAllOfThePage() throws Exception {
        Printed.Letter plain = first(Samples.on(TAG, STRAIGHT).startingAt(9), 1, Samples.heron());
        LabelSheet strays = sheet(-1.5, 0.75, 4, -2);
        Printed.Letter set = first(Samples.on(TAG, strays).startingAt(9), 1, Samples.heron());
        assertThat(set.left()).isCloseTo(plain.left() * 1.004 - 1.5, within(0.01));
        assertThat(set.baseline()).isCloseTo(plain.baseline() * 0.998 + 0.75, within(0.01));
    }

    @Test
    void aRollsPageIsAsWideAsTheRollAndAsLongAsTheLabelWithItsFeed() throws Exception {
        Printed upright = Printed.of(TAG.on(SheetSize.ROLL), Samples.heron(), Samples.kasuri());
        try (PDDocument document = Loader.loadPDF(upright.bytes())) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            assertThat(Mm.of(document.getPage(0).getMediaBox().getWidth())).isCloseTo(62, within(0.01));
            assertThat(Mm.of(document.getPage(0).getMediaBox().getHeight())).isCloseTo(90 + 6, within(0.01));
        }
        assertThat(upright.letters(1)).allSatisfy(letter -> {
            assertThat(letter.left()).isGreaterThan(3.5);
            assertThat(letter.right()).isLessThan(58.5);
        });
        PrintSettings tube = PrintSettings.of(LabelKind.TUBE_TAG, Market.EU).on(SheetSize.ROLL);
        try (PDDocument document =
                Loader.loadPDF(Printed.of(tube, Samples.heron()).bytes())) {
            assertThat(Mm.of(document.getPage(0).getMediaBox().getWidth())).isCloseTo(62, within(0.01));
            assertThat(Mm.of(document.getPage(0).getMediaBox().getHeight()))
                    .as("on its side")
                    .isCloseTo(170 + 6, within(0.01));
        }
        assertThat(upright.text()).as("no room is wasted on a test bar").doesNotContain("50 mm");
        assertThat(tube.finish().blackOnly()).isTrue();
        PrintSettings wide =
                PrintSettings.of(LabelKind.EXHIBITION_LABEL, Market.EU).on(SheetSize.ROLL);
        assertThatThrownBy(() -> Printed.of(wide, Samples.heron()))
                .hasMessageContainingAll("150 by 100 mm", "roll 62 mm wide");
        assertThat(LabelPaper.places(Samples.onRoll(wide, 110))).isEqualTo(1);
    }

    @Test
    void theTestPageCarriesTheBarsTheCrossAndTheCorrection() throws Exception {
        java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
        TestPage.print(sheet(-1.5, 0, 5, 0), out, Printed.CLOCK);
        Printed page = new Printed(out.toByteArray());
        assertThat(page.text()).contains("Market tags", "20.0 mm from the left", "-1.50 mm right", "5.0 ‰ across");
        assertThat(page.strokes(1))
                .filteredOn(s -> Math.abs(s.length() - 50) < 0.01)
                .hasSize(2);
        assertThat(page.strokes(1)).as("the cross, before the correction").anySatisfy(s -> {
            assertThat(s.length()).isCloseTo(8, within(0.01));
            assertThat((s.x1() + s.x2()) / 2).isCloseTo(20, within(0.01));
            assertThat(297 - s.y1()).isCloseTo(20, within(0.01));
        });
    }

    @ParameterizedTest
    @CsvSource({"20, R20", "29, 🌿 leaves", "62, WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW", "350, fig"
    })
    void everySheetThatCanBeKeptHasATestPageThatSaysWhatToMeasure(double widthMm, String name) throws Exception {
        java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
        LabelSheet roll = new LabelSheet(name, widthMm, 0, 1, 1, 15, 20, 2, 3, 0, 0, 0, 0, 0, 0);
        TestPage.print(roll, out, Printed.CLOCK);
        Printed page = new Printed(out.toByteArray());
        assertThat(page.text().replaceAll("\\s+", " ")).contains("Print at 100 %", "mm from");
        assertThat(page.letters(1)).allMatch(letter -> letter.left() > 0 && letter.right() < widthMm);
    }

    @Test
    void colourThatTouchesTheEdgeRunsOverItOnlyWhereBleedIsAsked() throws Exception {
        PrintSettings selvedge = TAG.arranged(tenterbook.labelling.Arrangement.SELVEDGE);
        for (double bleed : new double[] {0, 3}) {
            PrintSettings request = Samples.finished(selvedge, true, bleed);
            var box = Sheet.of(request).boxes().get(0);
            var image = Printed.of(request, Samples.heron()).image(1, 200);
            int rgb = image.getRGB((int) ((box.x() - 1) * 200 / 25.4), (int) ((box.y() + 30) * 200 / 25.4)) & 0xffffff;
            assertThat(rgb != 0xffffff).isEqualTo(bleed > 0);
        }
        assertThatThrownBy(() -> Samples.finished(TAG, true, 9)).isInstanceOf(IllegalArgumentException.class);
    }
}
