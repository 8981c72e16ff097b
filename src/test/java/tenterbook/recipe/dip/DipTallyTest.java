package tenterbook.recipe.dip;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.words.Written;

class DipTallyTest {
    private static DipTally typed(String text) {
        return DipTally.of(QuantityText.read(text, Unit.COUNT), 0, true);
    }

    @Test
    void completeTimedDipsCountAndADifferingNumberIsKeptBesideThem() {
        DipTally tally = DipTally.of(QuantityText.read("8", Unit.COUNT), 6, true);

        assertThat(tally.text()).isEqualTo("6");
        assertThat(tally.counted()).contains(DipCount.exactly(6));
        assertThat(tally.disagreements())
                .extracting(Written::inEnglish)
                .containsExactly("6 dips are timed, but 8 are said to have been made. The timed ones are counted.");
    }

    @Test
    void anUnfinishedListOfTimesGivesWayToTheNumberTyped() {
        DipTally tally = DipTally.of(QuantityText.read("6 to 8", Unit.COUNT), 2, false);

        assertThat(tally.counted()).contains(new DipCount(6, 8));
        assertThat(tally.disagreements()).singleElement().asString().contains("2 dips are timed", "6–8");
        assertThat(DipTally.of(QuantityText.read("forgot", Unit.COUNT), 2, false)
                        .text())
                .isEqualTo("2");
    }

    @Test
    void aRangeThatHoldsTheTimedNumberDisagreesWithNothing() {
        assertThat(DipTally.of(QuantityText.read("6 to 8", Unit.COUNT), 7, true).disagreements())
                .isEmpty();
    }

    @Test
    void rangesAndUnknownsStayWhatTheyAreInASum() {
        assertThat(typed("6 to 8").plus(typed("2")).text()).isEqualTo("8–10");
        assertThat(typed("6 to 8").plus(typed("forgot")).text()).isEqualTo("at least 6");
        assertThat(typed("6").plus(typed("at least 3")).counted()).isEmpty();
        assertThat(typed("about 6").plus(typed("2")).text()).isEqualTo("about 8");
        assertThat(typed("up to 8").text()).isEqualTo("up to 8");
        assertThat(typed("").plus(typed("forgot")).known()).isFalse();
        assertThat(DipTally.NONE.text()).isEmpty();
    }

    @Test
    void aNumberThatIsNoCountIsUnknown() {
        assertThat(DipTally.of(QuantityText.read("20 min", Unit.MINUTE), 0, true)
                        .known())
                .isFalse();
        assertThat(DipTally.of(Quantity.UNRECORDED, 0, true).counted()).isEmpty();
    }
}
