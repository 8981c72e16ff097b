package tenterbook.labelling.paper;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import tenterbook.archive.record.LabelSheet;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.rule.Market;

/** What holds for every kind of label in every arrangement, in colour and in black, on every paper. */
class EveryLabelTest {
    @BeforeAll
    static void begin() {
        VeraGreenfieldFoundryProvider.initialise();
    }

    static Stream<PrintSettings> everyFace() {
        return Stream.of(LabelKind.values())
                .flatMap(kind -> kind.arrangements().stream()
                        .map(arrangement -> PrintSettings.of(kind, Market.EU).arranged(arrangement))
                        .flatMap(request -> Stream.of(request, request.inBlack())));
    }

    static Stream<PrintSettings> everyPaper() {
        return everyFace()
                .flatMap(request -> Stream.of(
                        request,
                        Samples.finished(request.on(SheetSize.A4), true, 2),
                        Samples.on(request, own(request)),
                        // The widest roll holds no label of a wall.
                        request.kind() == LabelKind.CONDITION_LABEL ? request : Samples.onRoll(request, 110)));
    }

    private static LabelSheet own(PrintSettings request) {
        return new LabelSheet(
                "as large as it",
                300,
                297,
                1,
                1,
                request.format().widthMm(),
                request.format().heightMm(),
                7,
                9,
                0,
                0,
                0.4,
                -0.7,
                3,
                -2);
    }

    static Stream<PrintSettings> everyCoded() {
        return everyPaper()
                .filter(request -> request.kind() != LabelKind.CARE_LABEL
                        && request.kind() != LabelKind.EXHIBITION_LABEL
                        && !request.kind().statesCondition());
    }

    @ParameterizedTest
    @MethodSource("everyCoded")
    void itsSquareCodeIsReadFromAThreeHundredDpiPrint(PrintSettings request) throws Exception {
        // Held over the one label, as a telephone is.
        var page = Printed.of(request, Samples.kasuri()).image(1, 300);
        var box = Sheet.of(request).boxes().get(0);
        double dots = 300 / 25.4;
        var image = page.getSubimage((int) (box.x() * dots), (int) (box.y() * dots), (int) (box.width() * dots), (int)
                (box.height() * dots));
        assertThat(new QRCodeReader()
                        .decode(new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(image))))
                        .getText())
                .isEqualTo("V24-005\nHeron weir\nOficina Valderim");
    }

    @ParameterizedTest
    @MethodSource("everyPaper")
    void itIsArchivalPdf(PrintSettings request) throws Exception {
        byte[] pdf = Printed.of(request, Samples.kasuri()).bytes();
        try (var parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_2_B);
                var validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_2_B, false)) {
            var result = validator.validate(parser);
            assertThat(result.isCompliant())
                    .as(result.getTestAssertions().toString())
                    .isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("everyFace")
    void inBlackNothingButBlackIsPrinted(PrintSettings request) throws Exception {
        Set<Float> greys = new TreeSet<>();
        Set<String> others = new TreeSet<>();
        try (PDDocument document = Loader.loadPDF(Printed.of(Samples.finished(request, false, 0), Samples.kasuri())
                .bytes())) {
            Object before = null;
            for (Object token : new PDFStreamParser(document.getPage(0)).parse()) {
                if (token instanceof Operator operator) {
                    switch (operator.getName()) {
                        case "g", "G" -> greys.add(((COSNumber) before).floatValue());
                        case "rg", "RG" -> others.add(operator.getName());
                        default -> {}
                    }
                }
                before = token;
            }
        }
        if (request.finish().blackOnly()) {
            assertThat(greys).containsOnly(0f);
            assertThat(others).isEmpty();
        } else if (request.kind() == LabelKind.HANG_TAG) {
            assertThat(others).isNotEmpty();
        }
    }

    @Test
    void theLetterspacedNameIsReadAsItIsSpelt(@TempDir Path folder) throws Exception {
        Path tool = Stream.of("/usr/bin/pdftotext", "/usr/local/bin/pdftotext", "/opt/homebrew/bin/pdftotext")
                .map(Path::of)
                .filter(Files::isExecutable)
                .findFirst()
                .orElse(null);
        Printed printed =
                Printed.of(PrintSettings.of(LabelKind.HANG_TAG, Market.EU).arranged(Arrangement.HEM), Samples.kasuri());
        assertThat(printed.text()).contains("Oficina Valderim").contains("V24-005");
        Assumptions.assumeTrue(tool != null, "poppler's pdftotext is not here; PDFBox alone was asked");
        Path pdf = Files.write(folder.resolve("tag.pdf"), printed.bytes());
        Process process = new ProcessBuilder(tool.toString(), pdf.toString(), "-").start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).isZero();
        assertThat(text).contains("Oficina Valderim").contains("V24-005");
    }
}
