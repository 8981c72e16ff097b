package tenterbook.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.recipe.Recipes.bath;
import static tenterbook.recipe.Recipes.dips;
import static tenterbook.recipe.Recipes.lot;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.words.Written;

class CautionsTest {
    private static final Step COOL = bath(StepKind.BATH, "", "", "20 °C", "");

    @ParameterizedTest
    @CsvSource({
        "Slaked lime, Calcium hydroxide: irritates skin (H315)",
        "caustic soda, Sodium hydroxide: causes severe skin burns and eye damage (H314)",
        "Sodium Hydrosulfite, Sodium hydrosulphite: heats itself and may catch fire (H251)",
        "iron sulphate, Ferrous sulphate: harmful if swallowed (H302)",
        "copperas, Ferrous sulphate:",
        "oxalic acid, Oxalic acid: harmful if swallowed (H302)",
        "copper sulfate, Copper sulphate:",
        "potassium dichromate (chrome), do not use",
        "alum, Potassium alum: not classified",
        "tin chloride, Stannous chloride:",
        "aluminum acetate, Aluminium acetate:"
    })
    void aSubstanceIsKnownByItsUsualNames(String name, String caution) {
        List<Written> said = Cautions.of(COOL, List.of(lot("x", name)));

        assertThat(said).anyMatch(line -> line.inEnglish().contains(caution));
        assertThat(said).last().isEqualTo(Cautions.DEFERS);
    }

    @ParameterizedTest
    @ValueSource(strings = {"weld", "tinted quercitron", "environmental rinse", "sublime", "fructose", "madder"})
    void aWordInsideAnotherIsNotASubstance(String name) {
        assertThat(Cautions.of(COOL, List.of(lot("x", name)))).isEmpty();
    }

    @Test
    void copperasIsNotTakenForCopper() {
        assertThat(Cautions.of(COOL, List.of(lot("x", "copperas"))))
                .noneMatch(line -> line.inEnglish().startsWith("Copper sulphate"));
    }

    @Test
    void theWorkItselfHasItsCautions() {
        assertThat(Cautions.of(dips("3", "", ""), List.of()))
                .anyMatch(line -> line.inEnglish().contains("alkaline")
                        && line.inEnglish().contains("goggles and gloves"));
        assertThat(Cautions.of(bath(StepKind.BATH, "", "", "80 °C", ""), List.of()))
                .anyMatch(line -> line.inEnglish().startsWith("Hot bath: scalds"));
        assertThat(Cautions.of(bath(StepKind.MORDANTING, "", "", "forgot", ""), List.of()))
                .anyMatch(line -> line.inEnglish().startsWith("Hot bath: scalds"));
        assertThat(Cautions.of(COOL, List.of())).isEmpty();
        assertThat(Cautions.of(bath(StepKind.BATH, "", "", "100F", ""), List.of()))
                .isEmpty();
        assertThat(Cautions.ofClamping())
                .anyMatch(line -> line.inEnglish().contains("pinch"))
                .contains(Cautions.DEFERS);
    }

    @Test
    void everyHazardCodeOfTheTableIsPutIntoWords() {
        Table.rows("chemical-safety.csv")
                .forEach(row -> assertThat(Cautions.of(COOL, List.of(lot("x", row.get("chemical")))))
                        .as(row.get("chemical"))
                        .hasSizeGreaterThan(1)
                        .noneMatch(line -> line.inEnglish().contains("null")));
    }
}
