package tenterbook.labelling;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.labelling.rule.Market;
import tenterbook.labelling.rule.Question;
import tenterbook.material.Cloth;
import tenterbook.material.Evidence;
import tenterbook.material.FibreShare;

class FibreEvidenceTest {
    private static LabelText tag(FibreShare... content) {
        Cloth cloth = Samples.cloth("silk noil", "India", content);
        return LabelText.of(
                Samples.with(Samples.heron(), Samples.heron().piece(), List.of(cloth)),
                PrintSettings.of(LabelKind.HANG_TAG, Market.EU));
    }

    private static List<String> asked(LabelText text) {
        return text.questions().stream()
                .filter(question -> question.rule().says().startsWith("A share that is printed"))
                .map(Question::asks)
                .map(asks -> asks.inEnglish())
                .toList();
    }

    private static FibreShare silk(Evidence evidence, Double measured) {
        return new FibreShare("silk", 100.0, "", evidence, measured);
    }

    @Test
    void aShareWithoutASourceIsAskedAbout() {
        assertThat(asked(tag(silk(null, null))))
                .singleElement()
                .asString()
                .startsWith("What is the share of silk in")
                .endsWith("No source of it is recorded");
        for (Evidence evidence : List.of(Evidence.SUPPLIER, Evidence.INVOICE, Evidence.LABORATORY)) {
            assertThat(asked(tag(silk(evidence, null)))).isEmpty();
        }
    }

    @Test
    void aBurnTestAndAGuessTellNoShare() {
        for (Evidence evidence : List.of(Evidence.BURN_TEST, Evidence.OWN_GUESS)) {
            assertThat(asked(tag(silk(evidence, null))))
                    .singleElement()
                    .asString()
                    .contains(evidence.toString(), "tells no share");
        }
    }

    @Test
    void whatWasMeasuredIsPrintedAndADifferenceIsAskedAbout() {
        LabelText text = tag(
                new FibreShare("silk", 70.0, "", Evidence.SUPPLIER, 62.0),
                new FibreShare("cotton", 30.0, "", Evidence.SUPPLIER, 38.0));
        assertThat(text.of(LabelText.Part.CONTENT).toString())
                .contains("62", "38")
                .doesNotContain("70");
        assertThat(asked(text)).hasSize(2).allMatch(asks -> asks.contains("was measured with"));
        assertThat(asked(tag(silk(Evidence.LABORATORY, 98.0)))).isEmpty();
    }
}
