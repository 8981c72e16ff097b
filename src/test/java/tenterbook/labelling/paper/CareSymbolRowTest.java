package tenterbook.labelling.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.care.CareSymbol;
import tenterbook.labelling.rule.Market;
import tenterbook.piece.CareTest;
import tenterbook.piece.CareTest.Kind;
import tenterbook.piece.Category;
import tenterbook.typeset.PdfDocument;
import tenterbook.typeset.PrintColour;

/** Symbols on the sewn label: with the words, never without them, and nothing drawn that no test bears out. */
class CareSymbolRowTest {
    private static final PrintSettings ASKED =
            PrintSettings.of(LabelKind.CARE_LABEL, Market.EU).withCareSymbols();

    private static final Map<CareSymbol, BufferedImage> ALONE = new EnumMap<>(CareSymbol.class);

    private static PieceFacts tested(CareTest... tests) {
        return Samples.facts(Samples.piece("V24-005", "Heron weir", "", Category.SCARF, List.of(tests)));
    }

    private static PieceFacts well() {
        return tested(
                Samples.test(Kind.HAND_WASH, 40.0, true),
                Samples.test(Kind.OTHER_BLEACH, null, false),
                Samples.test(Kind.TUMBLE_DRY, 60.0, false),
                Samples.test(Kind.LINE_DRY, null, true),
                Samples.test(Kind.IRON, 150.0, true),
                Samples.test(Kind.DRY_CLEAN, null, false));
    }

    private static BufferedImage face(PieceFacts facts, PrintSettings request) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(LabelPaper.face(facts, request, 300)));
    }

    private static long dark(BufferedImage image) {
        long dark = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                dark += (image.getRGB(x, y) & 0xff) < 128 ? 1 : 0;
            }
        }
        return dark;
    }

    @Test
    void symbolsStandBesideTheWordsAndAreKeptByTheirWords() throws Exception {
        LabelText text = LabelText.of(well(), ASKED);
        assertThat(text.of(LabelText.Part.CARE_SYMBOL))
                .containsExactly(
                        "symbol: wash by hand, at most 40 °C",
                        "symbol: do not bleach",
                        "symbol: do not tumble dry",
                        "symbol: line dry",
                        "symbol: iron at most 150 °C",
                        "symbol: do not dry clean");
        assertThat(text.of(LabelText.Part.CARE)).hasSize(6);
        assertThat(text.lines())
                .filteredOn(line -> line.part() == LabelText.Part.CARE_SYMBOL)
                .allSatisfy(line -> assertThat(line.basis()).contains("test of 2024-04-02"));
        Printed printed = Printed.of(ASKED, well());
        assertThat(printed.text()).contains("Hand wash warm").doesNotContain("symbol:");
        long without = dark(face(well(), PrintSettings.of(LabelKind.CARE_LABEL, Market.EU)));
        assertThat(dark(face(well(), ASKED))).as("ink of six symbols").isGreaterThan(without + 3000);
    }

    @Test
    void withoutEvidenceNothingIsDrawnAndWithoutAskingNeither() throws Exception {
        PieceFacts untested = tested();
        assertThat(LabelText.of(untested, ASKED).of(LabelText.Part.CARE_SYMBOL)).isEmpty();
        assertThat(dark(face(untested, ASKED)))
                .isEqualTo(dark(face(untested, PrintSettings.of(LabelKind.CARE_LABEL, Market.EU))));
        assertThat(LabelText.of(well(), PrintSettings.of(LabelKind.CARE_LABEL, Market.EU))
                        .of(LabelText.Part.CARE_SYMBOL))
                .isEmpty();
    }

    /** Source: 16 CFR 423.8(g), from memory: symbols of ISO 3758 alone do not do. */
    @ParameterizedTest
    @EnumSource(Market.class)
    void noMarketsLabelHasSymbolsWithoutWords(Market market) {
        if (market == Market.CA || market == Market.JP) {
            return;
        }
        LabelText text = LabelText.of(
                well(), PrintSettings.of(LabelKind.CARE_LABEL, market).withCareSymbols());
        assertThat(text.of(LabelText.Part.CARE).size())
                .isGreaterThanOrEqualTo(text.of(LabelText.Part.CARE_SYMBOL).size() - 1);
    }

    @ParameterizedTest
    @EnumSource(CareSymbol.class)
    void everySymbolStaysWithinItsSquareAndLooksLikeNoOther(CareSymbol symbol) throws Exception {
        BufferedImage image = alone(symbol);
        int outside = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                boolean dark = (image.getRGB(x, y) & 0xff) < 128;
                double mmX = x * 25.4 / 150;
                double mmY = y * 25.4 / 150;
                outside += dark && (mmX < 9.8 || mmX > 34.2 || mmY < 9.8 || mmY > 34.2) ? 1 : 0;
            }
        }
        assertThat(dark(image)).isGreaterThan(400);
        assertThat(outside).isZero();
        for (CareSymbol other : CareSymbol.values()) {
            if (other != symbol && other.about() == symbol.about()) {
                assertThat(different(image, alone(other)))
                        .as("%s and %s", symbol, other)
                        .isGreaterThan(60);
            }
        }
    }

    private static BufferedImage alone(CareSymbol symbol) throws Exception {
        if (!ALONE.containsKey(symbol)) {
            ALONE.put(symbol, drawn(List.of(symbol), 24));
        }
        return ALONE.get(symbol);
    }

    private static int different(BufferedImage a, BufferedImage b) {
        int different = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                different += ((a.getRGB(x, y) & 0xff) < 128) != ((b.getRGB(x, y) & 0xff) < 128) ? 1 : 0;
            }
        }
        return different;
    }

    /** A page of 44 by 44 mm with a symbol of {@code size} mm at 10 mm from its corner. */
    private static BufferedImage drawn(List<CareSymbol> symbols, double size) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PdfDocument paper = new PdfDocument(Clock.systemUTC())) {
            paper.page(20 + size * symbols.size() * 1.2, 20 + size, null, ink -> {
                for (int i = 0; i < symbols.size(); i++) {
                    new CareSymbolDrawing(ink.from(10 + i * size * 1.2, 10), size, PrintColour.BLACK)
                            .draw(symbols.get(i));
                }
            });
            paper.save("Symbols", "en-GB", out);
        }
        try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
            return new PDFRenderer(document).renderImageWithDPI(0, 150);
        }
    }

    /** Pictures to look at, with {@code -Dlabels.write=<folder>}. */
    @Test
    void picturesAreWrittenWhereAskedFor() throws Exception {
        String folder = System.getProperty("labels.write");
        BufferedImage all = drawn(List.of(CareSymbol.values()), 14);
        assertThat(dark(all)).isGreaterThan(5000);
        if (folder != null) {
            ImageIO.write(all, "png", Path.of(folder, "care_symbols.png").toFile());
            ImageIO.write(
                    face(well(), ASKED),
                    "png",
                    Path.of(folder, "care_label_symbols.png").toFile());
        }
    }
}
