package tenterbook.labelling.care;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.labelling.Samples.test;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.labelling.rule.Market;
import tenterbook.labelling.rule.Question;
import tenterbook.labelling.rule.Rule;
import tenterbook.measure.Basis;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.CareTest.Kind;
import tenterbook.piece.Category;

class CareWordsTest {
    /** Source: 16 CFR 423 Appendix A, bounds of cold, warm and hot as remembered; degrees F by the exact definition. */
    @ParameterizedTest
    @CsvSource({
        "30, 'Hand wash cold, at most 30 °C (86 °F).', 'Hand wash cold, at most 86 °F (30 °C).'",
        "28, 'Hand wash cold, at most 28 °C (82 °F).', 'Hand wash cold, at most 82 °F (28 °C).'",
        "31, 'Hand wash warm, at most 31 °C (87 °F).', 'Hand wash warm, at most 87 °F (31 °C).'",
        "44, 'Hand wash warm, at most 44 °C (111 °F).', 'Hand wash warm, at most 111 °F (44 °C).'",
        "45, 'Hand wash hot, at most 45 °C (113 °F).', 'Hand wash hot, at most 113 °F (45 °C).'",
        "63, 'Hand wash hot, at most 63 °C (145 °F).', 'Hand wash hot, at most 145 °F (63 °C).'"
    })
    void theTemperatureWordIsTheTestsOwn(double celsius, String european, String american) {
        List<CareTest> tests = List.of(test(Kind.HAND_WASH, celsius, true));
        assertThat(words(tests, Market.EU)).containsExactly(european);
        assertThat(words(tests, Market.US)).containsExactly(american);
    }

    @Test
    void withoutAJudgedTestNoTreatmentIsOffered() {
        assertThat(words(List.of(), Market.EU)).containsExactly(CareWords.NO_TEST);
        CareWords unjudged = CareWords.of(CareCase.of(List.of(test(Kind.HAND_WASH, 30.0, null))), Market.US);
        assertThat(unjudged.lines()).extracting(CareLine::text).containsExactly(CareWords.NO_TEST);
        assertThat(unjudged.questions().toString()).contains("not judged");
        assertThat(words(List.of(test(Kind.LIGHT, null, true)), Market.EU)).containsExactly(CareWords.NO_TEST);
    }

    @Test
    void aFailedWashForbidsWashingAndSaysNothingOfDryCleaning() {
        assertThat(words(List.of(test(Kind.HAND_WASH, 30.0, false)), Market.US)).containsExactly("Do not wash.");
        assertThat(words(List.of(test(Kind.MACHINE_WASH, 30.0, false)), Market.US))
                .containsExactly("Do not machine wash.");
        assertThat(words(List.of(test(Kind.DRY_CLEAN, null, false)), Market.US)).containsExactly("Do not dryclean.");
        assertThat(words(List.of(test(Kind.DRY_CLEAN, null, true)), Market.US)).containsExactly("Dryclean.");
    }

    @Test
    void onlyATemperatureBelowEveryFailureIsPrinted() {
        assertThat(words(List.of(test(Kind.HAND_WASH, 30.0, true), test(Kind.HAND_WASH, 40.0, false)), Market.EU))
                .containsExactly("Hand wash cold, at most 30 °C (86 °F).");
        CareWords both = CareWords.of(
                CareCase.of(List.of(test(Kind.HAND_WASH, 30.0, true), test(Kind.HAND_WASH, 30.0, false))), Market.EU);
        assertThat(both.lines()).extracting(CareLine::text).containsExactly("Do not wash.");
        assertThat(both.questions().toString()).contains("which one holds?");
    }

    @Test
    void ofARangeOnlyTheLowerEndIsProven() {
        CareTest ranged = new CareTest(
                Kind.HAND_WASH, null, "", Quantity.between(28, 34, Unit.CELSIUS, Basis.REMEMBERED), "", true);
        assertThat(words(List.of(ranged), Market.EU)).containsExactly("Hand wash cold, at most 28 °C (82 °F).");
        CareTest upTo = new CareTest(
                Kind.HAND_WASH,
                null,
                "",
                new Quantity("up to 40", null, 40.0, Unit.CELSIUS, Basis.REMEMBERED, false),
                "",
                true);
        assertThat(words(List.of(upTo), Market.EU)).containsExactly("Hand wash. Tested temperature not recorded.");
    }

    @Test
    void aTestInFahrenheitIsUnderstood() {
        CareTest american = new CareTest(
                Kind.MACHINE_WASH, null, "", Quantity.between(86, 86, Unit.FAHRENHEIT, Basis.MEASURED), "", true);
        assertThat(words(List.of(american), Market.US)).containsExactly("Machine wash cold, at most 86 °F (30 °C).");
    }

    @Test
    void everyWordCarriesItsEvidence() {
        CareWords care = CareWords.of(
                CareCase.of(List.of(test(Kind.HAND_WASH, 30.0, true), test(Kind.RUB, null, false))), Market.EU);
        assertThat(care.lines()).extracting(CareLine::text).contains("Colour may rub off.");
        assertThat(care.lines())
                .allSatisfy(line -> assertThat(line.evidence()).contains("2024-04-02", "strip, neutral soap"));
    }

    /** Source: 16 CFR 423.6(c), reliable evidence, from memory. */
    @Test
    void aDryCleaningWithoutDateMethodOrResultGivesNoWords() {
        PartialDate day = PartialDate.of(LocalDate.of(2024, 4, 2));
        for (CareTest bare : List.of(
                new CareTest(Kind.DRY_CLEAN, null, "perchloroethylene", null, "no change", true),
                new CareTest(Kind.DRY_CLEAN, day, "", null, "no change", true),
                new CareTest(Kind.DRY_CLEAN, day, "perchloroethylene", null, "", true),
                new CareTest(Kind.DRY_CLEAN, null, "", null, "", true),
                new CareTest(Kind.DRY_CLEAN, null, "", null, "", false))) {
            CareWords care = CareWords.of(CareCase.of(List.of(bare)), Market.US);
            assertThat(care.lines()).extracting(CareLine::text).containsExactly(CareWords.NO_TEST);
            assertThat(care.questions().toString()).contains("Without date, method and result");
        }
        CareTest whole = new CareTest(Kind.DRY_CLEAN, day, "perchloroethylene", null, "no change", true);
        assertThat(words(List.of(whole), Market.US)).containsExactly("Dryclean.");
    }

    /** Source: 16 CFR 423.6(b); the passage or that it is from memory stands in the row. */
    @ParameterizedTest
    @CsvSource({
        "WASHING, silent.washing, If either washing or drycleaning can be used on the product",
        "BLEACHING, silent.bleaching, 'if all commercially available bleaches can be used on a regular basis'",
        "DRYING, silent.drying, ''",
        "IRONING, silent.ironing, ironing instruction must be given on a care label if ironing will be needed"
    })
    void inTheStatesATreatmentOfWhichNothingIsSaidIsAskedAbout(CareLine.About treatment, String id, String passage) {
        List<CareTest> all = new ArrayList<>(List.of(
                test(Kind.HAND_WASH, 30.0, true),
                test(Kind.CHLORINE_BLEACH, null, false),
                test(Kind.FLAT_DRY, null, true),
                test(Kind.IRON, 110.0, true)));
        assertThat(silent(all, Market.US, Category.SCARF)).isEmpty();
        all.remove(treatment.ordinal());
        List<CareTest> tests = treatment == CareLine.About.WASHING ? List.of() : all;
        assertThat(silent(tests, Market.US, Category.SCARF)).singleElement().satisfies(rule -> {
            assertThat(rule.id()).isEqualTo(id);
            assertThat(rule.citation()).startsWith("16 CFR 423.6(b)");
            assertThat(rule.passage()).contains(passage);
        });
        assertThat(silent(tests, Market.US, null)).hasSize(1);
        assertThat(silent(tests, Market.US, Category.WALL_HANGING)).isEmpty();
        assertThat(silent(tests, Market.EU, Category.SCARF)).isEmpty();
    }

    @Test
    void whereItMayNotBeWashedOrIsDryCleanedNothingMoreIsAsked() {
        assertThat(silent(List.of(test(Kind.HAND_WASH, 30.0, false)), Market.US, Category.SCARF))
                .isEmpty();
        assertThat(silent(List.of(test(Kind.DRY_CLEAN, null, true)), Market.US, Category.SCARF))
                .isEmpty();
    }

    private static List<Rule> silent(List<CareTest> tests, Market market, Category category) {
        return CareWords.of(new CareCase(category, tests, null, null), market).questions().stream()
                .map(Question::rule)
                .filter(rule -> rule.id().startsWith("silent."))
                .toList();
    }

    private static List<String> words(List<CareTest> tests, Market market) {
        return CareWords.of(CareCase.of(tests), market).lines().stream()
                .map(line -> line.text().replace('\u00a0', ' '))
                .toList();
    }
}
