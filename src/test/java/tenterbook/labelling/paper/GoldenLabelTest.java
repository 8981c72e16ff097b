package tenterbook.labelling.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.rule.Market;

/**
 * Labels as they were looked at and found good. After a wanted change of design, run with {@code -Dlabels.write=<folder>}, look
 * at the new pictures, and keep them.
 */
class GoldenLabelTest {
    private static final int DPI = 120;

    private static final PieceFacts PLACED = Samples.with(
            Samples.kasuri(),
            Samples.placed(Samples.kasuri().piece(), "drawer 3, second from the top"),
            Samples.kasuri().cloth().cloths());

    static Stream<Arguments> everyKindAndArrangement() {
        return Stream.of(LabelKind.values())
                .flatMap(kind -> kind.arrangements().stream()
                        .flatMap(arrangement ->
                                Stream.of(false, true).map(black -> Arguments.of(kind, arrangement, black))));
    }

    @ParameterizedTest
    @MethodSource("everyKindAndArrangement")
    void theLabelLooksAsItWasApproved(LabelKind kind, Arrangement arrangement, boolean black) throws Exception {
        PrintSettings request = PrintSettings.of(kind, Market.EU).withPrice().arranged(arrangement);
        byte[] png = LabelPaper.face(PLACED, black ? request.inBlack() : request, DPI);
        String name = (kind + "-" + arrangement.name() + (black ? "-black" : "") + ".png")
                .replace(' ', '_')
                .toLowerCase(Locale.ROOT);
        Optional<String> folder = Optional.ofNullable(System.getProperty("labels.write"));
        if (folder.isPresent()) {
            Files.write(Path.of(folder.get(), name), png);
        }
        try (InputStream in = GoldenLabelTest.class.getResourceAsStream("/labels/" + name)) {
            BufferedImage golden = ImageIO.read(in);
            BufferedImage found = ImageIO.read(new ByteArrayInputStream(png));
            assertThat(found.getWidth()).isEqualTo(golden.getWidth());
            assertThat(found.getHeight()).isEqualTo(golden.getHeight());
            assertThat(unlike(golden, found)).isLessThan(0.005);
        }
    }

    @Test
    void theComparisonSeesALabelThatIsNotTheSame() throws Exception {
        BufferedImage one = ImageIO.read(new ByteArrayInputStream(
                LabelPaper.face(Samples.kasuri(), PrintSettings.of(LabelKind.HANG_TAG, Market.EU), DPI)));
        BufferedImage other = ImageIO.read(new ByteArrayInputStream(
                LabelPaper.face(Samples.heron(), PrintSettings.of(LabelKind.HANG_TAG, Market.EU), DPI)));
        assertThat(unlike(one, other)).isGreaterThan(0.02);
    }

    /** The share of pixels that differ by more than a quarter of the scale in green. */
    private static double unlike(BufferedImage a, BufferedImage b) {
        int unlike = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                int difference = Math.abs((a.getRGB(x, y) >> 8 & 0xff) - (b.getRGB(x, y) >> 8 & 0xff));
                unlike += difference > 64 ? 1 : 0;
            }
        }
        return unlike / (double) (a.getWidth() * a.getHeight());
    }
}
