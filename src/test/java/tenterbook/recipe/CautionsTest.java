package tenterbook.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.recipe.Recipes.bath;
import static tenterbook.recipe.Recipes.dips;
import static tenterbook.recipe.Recipes.lot;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
        "'Slaked lime', 'Calcium hydroxide: see the supplier''s safety data sheet; caustic; goggles'",
        "quicklime, 'Calcium oxide (quicklime): see the supplier'",
        "'caustic soda', 'Sodium hydroxide: causes severe skin burns and eye damage (H314, from 2\u00a0%)'",
        "'Sodium Hydrosulfite', 'heats itself and may catch fire (H251)'",
        "'iron sulphate', 'Iron(II) sulphate heptahydrate: harmful if swallowed (H302)'",
        "copperas, 'irritates skin (H315, from 25\u00a0%)'",
        "'oxalic acid', 'Oxalic acid: harmful if swallowed (H302), harmful in contact with skin (H312) [CLP Annex VI'",
        "'copper sulfate', 'Copper sulphate pentahydrate: harmful if swallowed (H302), causes serious eye damage (H318)'",
        "'anhydrous copper sulphate', 'Copper sulphate, anhydrous: harmful if swallowed (H302), irritates eyes seriously'",
        "'potassium dichromate (chrome)', 'do not use'",
        "'potassium dichromate', 'may harm fertility and the unborn child (H360FD)'",
        "'potassium dichromate', 'may irritate the airways (H335, from 5\u00a0%)'",
        "alum, 'Potassium alum: see the supplier'",
        "'aluminum sulfate', 'Aluminium sulphate: see the supplier'",
        "'chrome alum', 'Chrome alum (potassium chromium(III) sulphate): see the supplier'",
        "'tin chloride', 'Tin(II) chloride: see the supplier'",
        "'soda ash', 'Sodium carbonate: irritates eyes seriously (H319)'",
        "ammonia, 'Ammonia solution: causes severe skin burns'",
        "'acetic acid', 'irritates skin (H315, at 10–25\u00a0%)'",
        "'formic acid', 'Formic acid: causes severe skin burns'",
        "'hydrogen peroxide', 'causes serious eye damage (H318, at 8–50\u00a0%)'",
        "'potassium permanganate', 'may make a fire stronger (H272)'",
        "'thiourea dioxide', 'Thiourea dioxide: see the supplier'",
        "'sodium metabisulphite', 'gives off toxic gas with acid (EUH031)'",
        "'aluminum acetate', 'Aluminium acetate: see the supplier'"
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
    void aNameThatIsPartOfALongerOneIsNotMeant() {
        for (String name : List.of("chrome alum", "aluminium sulphate", "iron acetate", "copper acetate")) {
            assertThat(Cautions.of(COOL, List.of(lot("x", name))))
                    .as(name)
                    .hasSize(2)
                    .noneMatch(line -> line.inEnglish().startsWith("Potassium alum"));
        }
    }

    /** Against the rows of CLP Annex VI that were read, where their list lies beside the checkout. */
    @Test
    void aStatementStandsOnlyBesideTheRowThatWasRead() throws IOException {
        String reference = System.getProperty("reference.folder", "");
        String facts = reference.isEmpty() ? "" : Files.readString(Path.of(reference, "facts_read.csv"));
        Table.rows("substances.csv").forEach(row -> {
            assertThat(row.get("status").equals("read"))
                    .as(row.toString())
                    .isEqualTo(!row.get("statements").isEmpty())
                    .isEqualTo(!row.get("passage").isEmpty());
            if (!reference.isEmpty() && row.get("status").equals("read")) {
                assertThat(facts).contains(row.get("passage"), row.get("source").replace("CLP ", ""));
            }
        });
        assertThat(Table.rows("substances.csv"))
                .extracting(row -> row.get("cas"))
                .filteredOn(cas -> !cas.isEmpty())
                .doesNotHaveDuplicates();
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
        Table.rows("substances.csv")
                .forEach(row -> assertThat(Cautions.of(
                                COOL, List.of(lot("x", row.get("words").split("\\|")[0]))))
                        .as(row.get("chemical"))
                        .hasSizeGreaterThan(1)
                        .noneMatch(line -> line.inEnglish().contains("null")));
    }
}
