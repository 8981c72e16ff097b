package tenterbook.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.recipe.Recipes.bath;
import static tenterbook.recipe.Recipes.bolts;
import static tenterbook.recipe.Recipes.charge;
import static tenterbook.recipe.Recipes.clamping;
import static tenterbook.recipe.Recipes.cloth;
import static tenterbook.recipe.Recipes.cut;
import static tenterbook.recipe.Recipes.lot;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.material.LotId;
import tenterbook.words.Written;

class DoubtsTest {
    private static List<String> doubts(String fibre, String substance, Step step) {
        return Doubts.of(
                        clamping(null, List.of(cut("X", "100", "100", "", "")), step),
                        bolts(cloth("X", fibre, "100")),
                        Map.of(new LotId("L"), lot("L", substance)))
                .stream()
                .map(Written::inEnglish)
                .toList();
    }

    private static Step charged(String wof, String grams) {
        return bath(StepKind.BATH, "", "", "", "", charge("L", wof, grams));
    }

    @Test
    void ironAboveFourPercentIsDoubtedWithItsReasonAndSource() {
        assertThat(doubts("silk", "iron sulphate", charged("6", "")))
                .containsExactly(
                        "iron sulphate at 6\u00a0% of the weight of fibre is outside the usual 1–4\u00a0%; 2 usual; over 4 harms silk and cellulose [common practice, from memory]. Is it meant so?");
        assertThat(doubts("silk", "iron sulphate", charged("2", ""))).isEmpty();
        // The same by weighing: 6 g to 100 g of cloth.
        assertThat(doubts("silk", "ferrous sulfate", charged("", "6 g"))).hasSize(1);
    }

    @Test
    void aRangeIsDoubtedOnlyWhereAllOfItLiesOutside() {
        assertThat(doubts("silk", "iron", charged("3-6", ""))).isEmpty();
        assertThat(doubts("silk", "iron", charged("5-6", ""))).hasSize(1);
        assertThat(doubts("silk", "iron", charged("at least 5", ""))).hasSize(1);
    }

    @Test
    void whatIsUnknownIsNotDoubted() {
        assertThat(doubts("silk", "iron", charged("forgot", ""))).isEmpty();
        assertThat(doubts("silk", "iron", charged("", ""))).isEmpty();
        assertThat(doubts("silk", "a dye nobody tabulated", charged("900", ""))).isEmpty();
    }

    @Test
    void aRowForOneFibreIsNotHeldAgainstAnother() {
        assertThat(doubts("wool", "alum", charged("30", ""))).hasSize(1);
        assertThat(doubts("linen", "alum", charged("30", ""))).isEmpty();
        assertThat(doubts("linen", "cream of tartar", charged("6", "")))
                .containsExactly("Cream of tartar is for wool and not for cellulose [common practice].");
        assertThat(doubts("wool", "cream of tartar", charged("6", ""))).isEmpty();
        assertThat(doubts("", "alum", charged("30", ""))).isEmpty();
    }

    @Test
    void aVatTooAlkalineForWoolIsDoubted() {
        Step vat = bath(StepKind.DIPS, "", "", "", "11.5");
        assertThat(doubts("wool", "weld", vat))
                .singleElement()
                .asString()
                .startsWith("A bath of pH\u00a011.5 is outside")
                .contains("too high for wool");
        assertThat(doubts("linen", "weld", vat)).isEmpty();
        assertThat(doubts("wool", "weld", bath(StepKind.DIPS, "", "", "", "9.5")))
                .isEmpty();
    }

    @Test
    void anUnusualLiquorRatioIsDoubted() {
        assertThat(doubts("silk", "weld", bath(StepKind.BATH, "", "100:1", "", "")))
                .hasSize(1);
        assertThat(doubts("silk", "weld", bath(StepKind.BATH, "", "30:1", "", "")))
                .isEmpty();
    }

    /** Source: Mairet, Vegetable Dyes and A Book on Vegetable Dyes (1916); passages beside the numbers in the table. */
    @ParameterizedTest
    @CsvSource({
        "wool, alum, 25, false",
        "wool, alum, 26, true",
        "wool, copperas, 8, false",
        "wool, copperas, 9, true",
        "wool, cochineal, 15, false",
        "wool, cochineal, 5, true",
        "linen, cochineal, 5, false",
        "silk, weld, 200, false",
        "cotton, weld, 40, true",
        "cotton, weld, 125, false",
        "wool, fustic, 50, false",
        "wool, cream of tartar, 10, false",
        "wool, tin chloride, 30, true",
        "silk, copper sulphate, 50, true",
        "wool, potassium dichromate, 20, true",
        "wool, chrome alum, 40, false",
        "wool, aluminium sulphate, 40, false"
    })
    void anAmountOutsideWhatIsUsualIsAskedAbout(String fibre, String substance, String percent, boolean doubted) {
        List<String> doubts = doubts(fibre, substance, charged(percent, ""));
        assertThat(doubts)
                .hasSize(doubted ? 1 : 0)
                .allSatisfy(d -> assertThat(d).endsWith("Is it meant so?"));
    }

    @ParameterizedTest
    @CsvSource({
        "linen, '', '', '', 17, A bath of pH",
        "linen, '', '', 300 °C, '', A temperature",
        "linen, '', '', 99 °C, 11, ''",
        "wool, '', '', '', 10.8, wool and silk",
        "silk, '', '', '', 10.8, wool and silk",
        "linen, '', '', '', 10.8, ''",
        "linen, 0.8 L, '', '', '', A liquor ratio of 8",
        "linen, 3 L, '', '', '', ''",
        "linen, 0.8 L, 30:1, '', '', ''"
    })
    void aBathOutsideWhatIsUsualIsAskedAbout(
            String fibre, String liquor, String ratio, String temperature, String ph, String asked) {
        List<String> doubts = doubts(fibre, "none", bath(StepKind.BATH, liquor, ratio, temperature, ph));
        assertThat(doubts)
                .hasSize(asked.isEmpty() ? 0 : 1)
                .allSatisfy(d -> assertThat(d).contains(asked));
    }

    /** The trade's way of asking: 2 L of liquor for 240 g of cloth is about 8 to 1. */
    @Test
    void twoLitresForTwoHundredAndFortyGramsAreAskedAbout() {
        List<Written> doubts = Doubts.of(
                clamping(
                        null,
                        List.of(cut("X", "", "", "240 g", "")),
                        bath(StepKind.MORDANTING, "2 L", "", "", ""),
                        bath(StepKind.DIPS, "2 L", "", "", "")),
                bolts(cloth("X", "linen", "100")),
                Map.of());
        assertThat(doubts).singleElement().asString().contains("8.3", "20–40");
    }

    @Test
    void aCutWithoutLengthIsAskedAbout() {
        List<Written> doubts = Doubts.of(
                clamping(null, List.of(cut("X", "0", "90", "", "")), bath(StepKind.BATH, "2 L", "", "", "")),
                bolts(cloth("X", "linen", "100")),
                Map.of());
        assertThat(doubts).singleElement().asString().contains("A side of a cut of 0");
    }

    /** Against the list of passages that were read, where it lies beside the checkout. */
    @Test
    void aUsualNumberIsReadOnlyBesideItsPassage() throws IOException {
        String reference = System.getProperty("reference.folder", "");
        String facts = reference.isEmpty() ? "" : Files.readString(Path.of(reference, "facts_read.csv"));
        assertThat(Table.rows("usual-numbers.csv"))
                .extracting(row -> row.get("id"))
                .doesNotHaveDuplicates();
        Table.rows("usual-numbers.csv").forEach(row -> {
            assertThat(row.get("status").equals("read"))
                    .as(row.toString())
                    .isEqualTo(!row.get("passage").isEmpty());
            if (!reference.isEmpty()) {
                assertThat(facts).contains(row.get("passage"));
            }
        });
    }
}
