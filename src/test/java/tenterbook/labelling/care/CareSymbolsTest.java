package tenterbook.labelling.care;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tenterbook.labelling.rule.Market;
import tenterbook.measure.Basis;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.CareTest;
import tenterbook.piece.CareTest.Kind;

/** Source of meanings, temperatures and order: ISO 3758 as published tables of care symbols tell it, dots and dryer from memory. */
class CareSymbolsTest {
    private static CareTest test(Kind kind, Double celsius, boolean passed, String method) {
        boolean dryClean = kind == Kind.DRY_CLEAN;
        return new CareTest(
                kind,
                dryClean ? PartialDate.of(LocalDate.of(2024, 4, 2)) : null,
                dryClean && method.isEmpty() ? "at the shop" : method,
                celsius == null ? null : Quantity.between(celsius, celsius, Unit.CELSIUS, Basis.MEASURED),
                "",
                passed,
                null,
                dryClean ? 4.5 : null,
                null);
    }

    private static List<CareSymbol> symbols(CareTest... tests) {
        return CareSymbols.of(CareCase.of(List.of(tests)), Market.EU).marks().stream()
                .map(CareSymbols.Mark::symbol)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "MACHINE_WASH, 30, true, '', WASH_30",
        "MACHINE_WASH, 39, true, '', WASH_30",
        "MACHINE_WASH, 40, true, gentle cycle, WASH_40_MILD",
        "MACHINE_WASH, 60, true, gentle cycle, WASH_40_MILD",
        "MACHINE_WASH, 30, true, wool programme, WASH_30_VERY_MILD",
        "MACHINE_WASH, 95, true, '', WASH_95",
        "MACHINE_WASH, 28, true, '', ",
        "MACHINE_WASH, , true, '', ",
        "MACHINE_WASH, 40, false, '', ",
        "HAND_WASH, 40, true, '', HAND_WASH",
        "HAND_WASH, 30, true, '', ",
        "HAND_WASH, 30, false, '', NO_WASH",
        "OTHER_BLEACH, , true, '', OXYGEN_BLEACH",
        "OTHER_BLEACH, , false, '', NO_BLEACH",
        "CHLORINE_BLEACH, , false, '', ",
        "TUMBLE_DRY, 80, true, '', TUMBLE_DRY",
        "TUMBLE_DRY, 60, true, '', TUMBLE_DRY_LOW",
        "TUMBLE_DRY, , true, '', ",
        "TUMBLE_DRY, , false, '', NO_TUMBLE_DRY",
        "LINE_DRY, , true, '', LINE_DRY",
        "FLAT_DRY, , true, '', FLAT_DRY",
        "IRON, 110, true, '', IRON_110",
        "IRON, 199, true, '', IRON_150",
        "IRON, 200, true, '', IRON_200",
        "IRON, 90, true, '', ",
        "IRON, 110, false, '', NO_IRON",
        "DRY_CLEAN, , true, '', ",
        "DRY_CLEAN, , true, perchloroethylene, DRY_CLEAN_P",
        "DRY_CLEAN, , true, hydrocarbon, DRY_CLEAN_F",
        "DRY_CLEAN, , false, '', NO_DRY_CLEAN",
        "RUB, , true, '', ",
        "LIGHT, , false, '', "
    })
    void aSymbolIsDrawnOnlyWhereTheTestCarriesAllThatItAllows(
            Kind kind, Double celsius, boolean passed, String method, CareSymbol expected) {
        assertThat(symbols(test(kind, celsius, passed, method)))
                .isEqualTo(expected == null ? List.of() : List.of(expected));
    }

    @Test
    void theMildnessOfTheSymbolStaysInAResultOfSeveralLines() {
        for (String result : List.of("colour held\ngentle cycle", "gentle cycle\nno bleeding", "very\ngentle\ncycle")) {
            CareTest test = new CareTest(
                    Kind.MACHINE_WASH,
                    null,
                    "",
                    Quantity.between(40.0, 40.0, Unit.CELSIUS, Basis.MEASURED),
                    result,
                    true);
            assertThat(symbols(test))
                    .as(result)
                    .containsExactly(
                            result.startsWith("very") ? CareSymbol.WASH_40_VERY_MILD : CareSymbol.WASH_40_MILD);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "hydrocarbon only, not perchloroethylene; DRY_CLEAN_F",
                "hydrocarbon, no perchloroethylene; DRY_CLEAN_F",
                "hydrocarbon, perchloroethylene was not tried; DRY_CLEAN_F",
                "not in perchloroethylene, in hydrocarbon; DRY_CLEAN_F",
                "hydrocarbon only not perchloroethylene; DRY_CLEAN_F",
                "never perchloroethylene; ",
                "hydrocarbon was not tried; ",
                "neither perchloroethylene nor hydrocarbon; ",
                "perchloroethylene, hydrocarbon excluded; ",
                "perchloroethylene or hydrocarbon; DRY_CLEAN_P",
                "perchloroethylene, no change; DRY_CLEAN_P",
                "perchloroethylene without change; DRY_CLEAN_P"
            })
    void aSolventThatTheTestExcludesIsNotPermitted(String method, CareSymbol expected) {
        CareTest test = test(Kind.DRY_CLEAN, null, true, method);
        assertThat(symbols(test)).isEqualTo(expected == null ? List.of() : List.of(expected));
        if (expected == null) {
            assertThat(CareSymbols.of(CareCase.of(List.of(test)), Market.EU)
                            .gaps()
                            .toString())
                    .contains("found “" + method + "”", "as in ‘hydrocarbon’");
        }
    }

    @Test
    void symbolsStandInTheOrderOfTheStandardAndGapsAreTold() {
        CareTest[] tests = {
            test(Kind.DRY_CLEAN, null, false, ""),
            test(Kind.IRON, 150.0, true, ""),
            test(Kind.LINE_DRY, null, true, ""),
            test(Kind.TUMBLE_DRY, 60.0, false, ""),
            test(Kind.HAND_WASH, 40.0, true, "")
        };
        assertThat(symbols(tests))
                .containsExactly(
                        CareSymbol.HAND_WASH,
                        CareSymbol.NO_TUMBLE_DRY,
                        CareSymbol.LINE_DRY,
                        CareSymbol.IRON_150,
                        CareSymbol.NO_DRY_CLEAN);
        String asks = CareSymbols.of(CareCase.of(List.of(tests)), Market.EU)
                .questions()
                .toString();
        assertThat(asks).contains("bleaching: no fitting test", "trademarks").doesNotContain("washing:");
        assertThat(CareSymbols.of(CareCase.of(List.of(test(Kind.HAND_WASH, 30.0, true, ""))), Market.EU)
                        .questions()
                        .toString())
                .contains("allows 40 °C");
    }

    /** Source: 16 CFR 423.8(g) and ASTM D5489, from memory; guidance on Japan, JIS L 0001. */
    @Test
    void theMarketsWordOnSymbolsIsToldWithThem() {
        CareCase washed = CareCase.of(List.of(test(Kind.HAND_WASH, 40.0, true, "")));
        assertThat(CareSymbols.of(washed, Market.US).questions().toString()).contains("the words stand as well");
        assertThat(CareSymbols.of(washed, Market.JP).questions().toString()).contains("JIS L 0001");
    }

    @ParameterizedTest
    @EnumSource(CareSymbol.class)
    void aSymbolIsKnownAgainByItsWords(CareSymbol symbol) {
        assertThat(CareSymbol.of(symbol.words())).contains(symbol);
    }
}
