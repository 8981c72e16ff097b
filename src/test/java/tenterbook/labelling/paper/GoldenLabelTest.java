package tenterbook.labelling.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.Locale;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.Approved;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.rule.Market;

/**
 * Labels as they were looked at and found good. See {@link Approved} for a wanted change of design.
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
        Approved.picture("labels/" + name, png);
    }

    @ParameterizedTest
    @EnumSource(LabelKind.class)
    void theWordsAreThoseApproved(LabelKind kind) throws Exception {
        Approved.words(
                "labels/" + kind.code() + ".txt",
                LabelText.of(PLACED, PrintSettings.of(kind, Market.EU).withPrice()).lines().stream()
                        .map(line -> line.part().code() + ": " + line.text())
                        .toList());
    }

    @Test
    void theComparisonSeesALabelThatIsNotTheSame() throws Exception {
        BufferedImage one = ImageIO.read(new ByteArrayInputStream(
                LabelPaper.face(Samples.kasuri(), PrintSettings.of(LabelKind.HANG_TAG, Market.EU), DPI)));
        BufferedImage other = ImageIO.read(new ByteArrayInputStream(
                LabelPaper.face(Samples.heron(), PrintSettings.of(LabelKind.HANG_TAG, Market.EU), DPI)));
        assertThat(Approved.worstTile(one, other)).isGreaterThan(0.2);
    }

    @Test
    void theComparisonSeesOneOtherWord() throws Exception {
        PieceFacts moved = Samples.with(
                Samples.kasuri(),
                Samples.placed(Samples.kasuri().piece(), "drawer 3, fourth from the top"),
                Samples.kasuri().cloth().cloths());
        PrintSettings request = PrintSettings.of(LabelKind.SHELF_TAG, Market.EU);
        assertThat(Approved.worstTile(
                        Approved.read(LabelPaper.face(PLACED, request, DPI)),
                        Approved.read(LabelPaper.face(moved, request, DPI))))
                .isGreaterThan(0.08);
    }
}
