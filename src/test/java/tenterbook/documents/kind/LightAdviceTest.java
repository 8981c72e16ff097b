package tenterbook.documents.kind;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LightAdvice;
import tenterbook.labelling.Samples;
import tenterbook.labelling.rule.Market;
import tenterbook.labelling.rule.Rule;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.material.LotId;
import tenterbook.material.Role;
import tenterbook.recipe.Charge;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;

class LightAdviceTest {
    private static PieceFacts facts(String dyes, String fibre) {
        PieceFacts heron = Samples.heron();
        List<Lot> lots = dyes.isEmpty()
                ? List.of()
                : List.of(dyes.split(" and ")).stream()
                        .map(name -> new Lot(
                                new LotId(name.replace(' ', '-')),
                                Role.DYE,
                                name,
                                null,
                                "",
                                "",
                                "",
                                "",
                                "",
                                null,
                                null,
                                null,
                                "",
                                null))
                        .toList();
        Cloth cloth = Samples.cloth(fibre + " cloth", "", Samples.share(fibre, 100.0));
        Step bath = new Step(
                StepKind.BATH,
                null,
                lots.stream().map(lot -> new Charge(lot.id(), null, null)).toList(),
                null,
                null,
                null,
                null,
                null,
                "",
                null,
                null,
                "");
        Clamping clamping = new Clamping(
                new ClampingId("C1"),
                "",
                null,
                null,
                null,
                null,
                List.of(bath),
                null,
                "",
                "",
                "",
                "",
                null,
                null,
                null,
                null);
        return Samples.facts(heron.piece(), List.of(cloth), lots, List.of(), List.of(clamping), List.of());
    }

    /**
     * High: 15,000 lx·h a year, medium: 150,000 (light policy of the National Gallery, London); lac, cochineal and most plant
     * extracts high, alizarin reds on wool medium (Canadian Conservation Institute, second hand); turmeric and onion skin beyond
     * (Ishii and others). Indigo on cotton never has a limit of low sensitivity.
     */
    @ParameterizedTest
    @CsvSource({
        "lac extract, silk, High, '15,000'",
        "madder, wool, Medium, '150,000'",
        "madder, cotton, High, '15,000'",
        "woad, wool, Medium, '150,000'",
        "woad, linen, High, '15,000'",
        "woad and weld, wool, High, '15,000'",
        "turmeric, wool, Extreme, 'well under 15,000'",
        "heather, wool, High, '15,000'",
        "'', wool, The dyes are not recorded, '15,000'"
    })
    void theMostSensitiveDyeDecides(String dyes, String fibre, String degree, String dose) {
        String caution = LightAdvice.caution(facts(dyes, fibre));
        assertThat(caution).startsWith(degree).contains(dose + " lux hours").contains("at most 50 lux");
        assertThat(caution).doesNotContain("200 lux", "600,000");
    }

    @ParameterizedTest
    @CsvSource({"lac extract, read second hand", "weld, from memory", "heather, not in this program’s table"})
    void theSourcesTellWhetherADegreeWasReadOrIsFromMemory(String dye, String status) {
        assertThat(LightAdvice.sources(List.of(facts(dye, "silk"))))
                .contains(status)
                .contains("50 lux");
    }

    /** A limit is named by whose policy it is, and is that of the list of rules. */
    @Test
    void theLimitsAreThoseOfThePolicyThatWasRead() {
        String sources = LightAdvice.sources(List.of(facts("madder", "wool")));
        assertThat(sources).contains("National Gallery, London").doesNotContain("CIE");
        for (String degree : List.of("medium", "high")) {
            Rule rule = Market.EU.rules().rule("light." + degree);
            assertThat(rule.status()).isEqualTo("read");
            String dyes = degree.equals("medium") ? "madder" : "lac extract";
            assertThat(LightAdvice.caution(facts(dyes, "wool")))
                    .contains("at most %.0f lux".formatted(rule.figure(0)))
                    .contains("%,.0f lux hours a year".formatted(rule.figure(1)));
        }
    }
}
