package tenterbook.labelling;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.RestoredSample;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.LabelText.Part;
import tenterbook.labelling.rule.Market;

class AdviceTest {
    @ParameterizedTest
    @CsvSource({
        "Keep out of strong sun., ''",
        "Keep away from direct sunlight., ''",
        "Avoid bright light!, ''",
        "Keep out of strong sun. Roll it., Roll it.",
        "Keep out of strong heat., Keep out of strong heat.",
        "Show it in strong light., Show it in strong light.",
        "'', ''"
    })
    void theStudiosLineIsPrintedWithoutWhatATestAlreadySays(String typed, String left) {
        assertThat(SameAdvice.without(typed, List.of("Do not bleach.", "Keep out of strong light.")))
                .isEqualTo(left);
        assertThat(SameAdvice.without(typed, List.of("Do not bleach."))).isEqualTo(typed);
    }

    @ParameterizedTest
    @CsvSource({
        "45 lux measured at the middle at noon., '', 45 lux measured at the middle at noon.",
        "50 lux at most. Cutch fades in light., 50 lux at most. Cutch fades in light., ''",
        "Never above 50 lux. 38 lx on the day., Never above 50 lux., 38 lx on the day.",
        "Dim., Dim., ''"
    })
    void aMeasurementOfLightIsNoAdvice(String recorded, String advice, String measured) {
        assertThat(ExaminationLight.advice(recorded)).isEqualTo(advice);
        assertThat(ExaminationLight.measured(recorded)).isEqualTo(measured);
    }

    @Test
    void noLabelOfTheSampleRepeatsItselfOrLacksItsFullStop(@TempDir Path folder) throws Exception {
        RestoredSample.copyTo(folder.resolve("studio"));
        try (Archive archive = Archive.open(folder.resolve("studio"), Clock.systemUTC())) {
            int advised = 0;
            for (var saved : archive.ledger().all(Kinds.PIECE)) {
                PieceFacts facts = PieceReader.of(archive, saved.record());
                String care = String.join(
                        " ",
                        LabelText.of(facts, PrintSettings.of(LabelKind.HANG_TAG, Market.EU))
                                .of(Part.CARE));
                assertThat(care.contains("strong sun") && care.contains("strong light"))
                        .as(care)
                        .isFalse();
                advised += care.contains("strong light") ? 1 : 0;
                LabelText label = LabelText.of(facts, PrintSettings.of(LabelKind.CONDITION_LABEL, Market.EU));
                assertThat(label.of(Part.CONDITION))
                        .allSatisfy(line -> assertThat(line).endsWith("."));
                assertThat(label.of(Part.ADVICE))
                        .allSatisfy(line -> assertThat(line).doesNotContain("lux measured"));
                if (saved.record().number().value().equals("V24-013")) {
                    assertThat(label.of(Part.CONDITION))
                            .contains("Light when examined: 45 lux measured at the middle at noon.");
                }
            }
            assertThat(advised).isPositive();
        }
    }
}
