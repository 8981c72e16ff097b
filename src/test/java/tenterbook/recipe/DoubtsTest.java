package tenterbook.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.recipe.Recipes.bath;
import static tenterbook.recipe.Recipes.bolts;
import static tenterbook.recipe.Recipes.charge;
import static tenterbook.recipe.Recipes.clamping;
import static tenterbook.recipe.Recipes.cloth;
import static tenterbook.recipe.Recipes.cut;
import static tenterbook.recipe.Recipes.lot;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
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
                        "iron sulphate at 6\u00a0% of the weight of fibre is outside the usual 1–4\u00a0%; 2 usual; over 4 harms silk and wool [from memory].");
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
        assertThat(doubts("wool", "weld", vat)).singleElement().asString().contains("too high for wool");
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
}
