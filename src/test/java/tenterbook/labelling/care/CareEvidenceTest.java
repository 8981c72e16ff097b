package tenterbook.labelling.care;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.labelling.care.CareCase.Of;
import tenterbook.labelling.rule.Market;
import tenterbook.measure.Basis;
import tenterbook.measure.OwnTable;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.CareTest.Kind;
import tenterbook.piece.Category;
import tenterbook.piece.Specimen;
import tenterbook.piece.TestStandard;

class CareEvidenceTest {
    private static CareTest test(
            Kind kind, Double celsius, Boolean passed, TestStandard by, Double grade, Specimen on) {
        return new CareTest(
                kind,
                PartialDate.of(LocalDate.of(2024, 4, 2)),
                kind == Kind.DRY_CLEAN ? "at the shop" : "",
                celsius == null ? null : Quantity.between(celsius, celsius, Unit.CELSIUS, Basis.MEASURED),
                kind == Kind.DRY_CLEAN ? "no change" : "",
                passed,
                by,
                grade,
                on);
    }

    private static CareTest test(Kind kind, Double celsius, Boolean passed) {
        return test(kind, celsius, passed, null, null, null);
    }

    private static CareCase tested(CareTest... tests) {
        return CareCase.of(List.of(tests));
    }

    private static List<String> words(CareCase about, Market market) {
        return CareWords.of(about, market).lines().stream()
                .map(line -> line.text().replace('\u00a0', ' '))
                .toList();
    }

    private static String asks(CareCase about) {
        return CareWords.of(about, Market.EU).questions().toString();
    }

    /** Source: titles of the methods: ISO 105-X12 and AATCC 8 rubbing, -B02 and 16 light, -E01 water, -C06 and 61 laundering. */
    @ParameterizedTest
    @CsvSource({
        "ISO_105_X12, false",
        "AATCC_8, false",
        "ISO_105_B02, false",
        "AATCC_16, false",
        "ISO_105_E01, false",
        "ISO_105_C06, true",
        "AATCC_61, true",
        "OWN, true"
    })
    void onlyAMethodThatTestsWashingGivesWashWords(TestStandard by, boolean fits) {
        CareCase about = tested(test(Kind.HAND_WASH, 30.0, true, by, null, null));
        if (fits) {
            assertThat(words(about, Market.EU)).containsExactly("Hand wash cold, at most 30 °C (86 °F).");
        } else {
            assertThat(words(about, Market.EU)).containsExactly(CareWords.NO_TEST);
            assertThat(asks(about)).contains("What was tested?", by.toString());
        }
    }

    @Test
    void aMethodNamedInTheMakersWordsCountsToo() {
        CareTest rubbed = new CareTest(Kind.MACHINE_WASH, null, "ISO 105-X12", null, "", true);
        assertThat(words(tested(rubbed), Market.US)).containsExactly(CareWords.NO_TEST);
    }

    @Test
    void aTestOnAnotherClothOrDyeIsAskedAboutAndPrintsNothing() {
        CareCase other = tested(test(Kind.HAND_WASH, 30.0, true, null, null, Specimen.OTHER));
        assertThat(words(other, Market.EU)).containsExactly(CareWords.NO_TEST);
        assertThat(asks(other)).contains("another cloth or dye");
        assertThat(words(tested(test(Kind.HAND_WASH, 30.0, true, null, null, Specimen.STRIP)), Market.EU))
                .containsExactly("Hand wash cold, at most 30 °C (86 °F).");
    }

    @Test
    void aTestFromBeforeTheLastDyeingAllowsNothingAndStillWarns() {
        PartialDate later = PartialDate.of(LocalDate.of(2024, 6, 1));
        CareCase passed = new CareCase(null, List.of(test(Kind.HAND_WASH, 30.0, true)), null, later);
        assertThat(words(passed, Market.EU)).containsExactly(CareWords.NO_TEST);
        assertThat(asks(passed)).contains("2024-06-01, which is later");
        CareCase failed = new CareCase(null, List.of(test(Kind.HAND_WASH, 30.0, false)), null, later);
        assertThat(words(failed, Market.EU)).containsExactly("Do not wash.");
    }

    @Test
    void withoutAFittingTestThereIsNoTemperatureAndNoDryCleaning() {
        CareCase silk =
                tested(test(Kind.RUB, null, true), test(Kind.LIGHT, null, true)).with(Of.FIBRE, List.of("silk"));
        for (Market market : Market.values()) {
            assertThat(words(silk, market)).containsExactly(CareWords.NO_TEST);
        }
        CareCase failed = tested(test(Kind.HAND_WASH, 30.0, false)).with(Of.FIBRE, List.of("wool"));
        for (Market market : Market.values()) {
            assertThat(words(failed, market)).containsExactly("Do not wash.");
        }
    }

    /** Source: 16 CFR 423.6(b): where neither is safe, "Do not wash - do not dryclean". */
    @Test
    void whereNeitherIsSafeTheStatesHaveTheirOwnWords() {
        CareCase neither = tested(test(Kind.HAND_WASH, 30.0, false), test(Kind.DRY_CLEAN, null, false));
        assertThat(words(neither, Market.US)).containsExactly("Do not wash - do not dryclean.");
        assertThat(CareWords.of(neither, Market.US).lines().get(0).evidence())
                .contains("hand wash test", "dry clean test");
        assertThat(words(neither, Market.EU)).containsExactly("Do not wash.", "Do not dry clean.");
    }

    /** Source: 16 CFR 423 Appendix A, words as remembered; the order is that of ISO 3758. */
    @Test
    void everyTreatmentHasItsWordsInTheOrderOfTheStandard() {
        CareCase all = tested(
                test(Kind.LIGHT, null, false),
                test(Kind.DRY_CLEAN, null, true),
                test(Kind.IRON, 150.0, true),
                test(Kind.LINE_DRY, null, true),
                test(Kind.TUMBLE_DRY, 60.0, false),
                test(Kind.OTHER_BLEACH, null, true),
                test(Kind.CHLORINE_BLEACH, null, false),
                test(Kind.HAND_WASH, 40.0, true),
                test(Kind.MACHINE_WASH, 40.0, false));
        assertThat(words(all, Market.US))
                .containsExactly(
                        "Hand wash warm, at most 104 °F (40 °C).",
                        "Do not machine wash.",
                        "Only non-chlorine bleach, when needed.",
                        "Do not tumble dry.",
                        "Line dry.",
                        "Warm iron, at most 302 °F (150 °C).",
                        "Dryclean.",
                        "Keep out of strong light.");
        assertThat(words(all, Market.UK)).contains("Iron, at most 150 °C.", "Dry clean.");
    }

    @ParameterizedTest
    @CsvSource({"110, Cool iron", "149, Cool iron", "150, Warm iron", "199, Warm iron", "200, Iron"})
    void theHeatOfAnIronHasAWordInTheStates(double celsius, String word) {
        assertThat(words(tested(test(Kind.IRON, celsius, true)), Market.US))
                .singleElement()
                .asString()
                .startsWith(word + ", at most");
    }

    @Test
    void aGradeThatDoesNotGoWithTheVerdictIsAskedAbout() {
        assertThat(asks(tested(test(Kind.MACHINE_WASH, 40.0, true, TestStandard.ISO_105_C06, 2.5, null))))
                .contains("Is grade 2-3 a pass?", "grade 4");
        assertThat(asks(tested(test(Kind.RUB, null, false, TestStandard.ISO_105_X12, 4.5, null))))
                .contains("Is grade 4-5 a failure?");
        assertThat(asks(tested(test(Kind.LIGHT, null, true, TestStandard.ISO_105_B02, 4.0, null))))
                .contains("blue wool");
        assertThat(asks(tested(test(Kind.MACHINE_WASH, 40.0, true, TestStandard.ISO_105_C06, 4.5, null))))
                .doesNotContain("a pass?")
                .contains("not shrinkage");
    }

    /** Common practice, as the table has it; nothing of it is printed. */
    @ParameterizedTest
    @CsvSource({
        "DYE, woad, rub off, RUB",
        "DYE, Indigo (natural), rub off, RUB",
        "DYE, turmeric, fugitive, LIGHT",
        "DYE, annatto seed, fugitive, LIGHT",
        "MORDANT, ferrous sulfate, Iron weakens, HAND_WASH",
        "FIBRE, wool, felts, HAND_WASH",
        "CONSTRUCTION, silk organza plain, stiffness, HAND_WASH",
        "FINISH, starch, rings, WATER",
        "TRIM, horn toggle, crack, HAND_WASH"
    })
    void whatIsCommonlyHeldIsAskedUntilAFittingTestAnswers(Of of, String name, String says, Kind answer) {
        CareCase open = tested().with(of, List.of(name));
        assertThat(asks(open)).contains("Is there a ", " test?", says, "common practice");
        assertThat(words(open, Market.EU)).containsExactly(CareWords.NO_TEST);
        CareCase answered = tested(test(answer, 30.0, true)).with(of, List.of(name));
        assertThat(CareWords.of(answered, Market.EU).questions().stream()
                        .map(question -> question.asks().inEnglish())
                        .filter(q -> q.contains(says) && q.startsWith("Is there a ")))
                .isEmpty();
    }

    @Test
    void aWashWarmerThanIsUsuallyDaredIsPrintedAsTestedAndAskedAbout() {
        CareCase wool = tested(test(Kind.HAND_WASH, 40.0, true)).with(Of.FIBRE, List.of("wool"));
        assertThat(words(wool, Market.EU)).containsExactly("Hand wash warm, at most 40 °C (104 °F).");
        assertThat(asks(wool)).contains("Did the wash at", "not warmer than 30 °C");
        CareCase cool = tested(test(Kind.HAND_WASH, 30.0, true)).with(Of.FIBRE, List.of("wool"));
        assertThat(asks(cool)).doesNotContain("Did the wash at");
    }

    /** A laundering test of colour (ISO 105-C06) says nothing of felting, so the stricter of the two is printed. */
    @Test
    void aTestOfColourAloneIsLimitedByTheMostSensitiveMaterial() {
        CareTest colour = test(Kind.MACHINE_WASH, 60.0, true, TestStandard.ISO_105_C06, 4.5, Specimen.STRIP);
        CareCase wool = tested(colour).with(Of.FIBRE, List.of("wool")).with(Of.DYE, List.of("madder"));
        assertThat(words(wool, Market.EU)).containsExactly("Machine wash cold, at most 30 °C (86 °F).");
        assertThat(CareWords.of(wool, Market.EU).lines().get(0).evidence())
                .contains("at 60", "kept to 30 °C", "felts", "common practice");
        assertThat(CareSymbols.of(wool, Market.EU).marks())
                .extracting(CareSymbols.Mark::symbol)
                .containsExactly(CareSymbol.WASH_30);
        CareCase madder = tested(colour).with(Of.FIBRE, List.of("linen")).with(Of.DYE, List.of("madder"));
        assertThat(words(madder, Market.EU)).containsExactly("Machine wash warm, at most 40 °C (104 °F).");
        CareCase own = tested(test(Kind.MACHINE_WASH, 60.0, true, TestStandard.OWN, null, Specimen.PIECE))
                .with(Of.FIBRE, List.of("wool"));
        assertThat(words(own, Market.EU)).containsExactly("Machine wash hot, at most 60 °C (140 °F).");
    }

    /** Source: guidance on Japan, washing care on scarves and shawls since 1 April 2017; 16 CFR 423.6 for clothing. */
    @Test
    void whereCareMustBeStatedALabelWithoutEvidenceIsRefused() {
        CareCase scarf = new CareCase(Category.SCARF, List.of(), null, null);
        assertThat(CareWords.of(scarf, Market.JP).missing().toString())
                .contains("1 April 2017", "JIS L 0001", "Test a washing");
        CareCase dryCleaned = new CareCase(Category.SCARF, List.of(test(Kind.DRY_CLEAN, null, true)), null, null);
        assertThat(CareWords.of(dryCleaned, Market.JP).missing()).isNotNull();
        CareCase washed = new CareCase(Category.SCARF, List.of(test(Kind.HAND_WASH, 30.0, false)), null, null);
        assertThat(CareWords.of(washed, Market.JP).missing())
                .as("'do not wash' is care too")
                .isNull();
        CareCase garment = new CareCase(Category.GARMENT, List.of(), null, null);
        assertThat(CareWords.of(garment, Market.US).missing()).isNotNull();
        assertThat(CareWords.of(new CareCase(Category.GARMENT, dryCleaned.tests(), null, null), Market.US)
                        .missing())
                .isNull();
        assertThat(CareWords.of(scarf, Market.US).missing()).isNull();
        assertThat(CareWords.of(scarf, Market.EU).missing()).isNull();
    }

    @ParameterizedTest
    @EnumSource(TestStandard.class)
    void everyStandardHasItsRowInTheTable(TestStandard standard) {
        assertThat(OwnTable.rows("/label/care-methods.csv"))
                .anyMatch(row -> row.get("method").equals(standard.toString()));
    }

    @Test
    void everyKindNamedInTheTablesIsOne() {
        List<String> kinds = List.of(Kind.values()).stream().map(Kind::toString).toList();
        for (var row : OwnTable.rows("/label/care-practice.csv")) {
            assertThat(kinds).contains(row.get("answered_by").split("\\|"));
            assertThat(row.get("source")).startsWith("common practice");
        }
        for (var row : OwnTable.rows("/label/care-methods.csv")) {
            if (!row.get("fits").isEmpty()) {
                assertThat(kinds).contains(row.get("fits").split("\\|"));
            }
        }
    }
}
