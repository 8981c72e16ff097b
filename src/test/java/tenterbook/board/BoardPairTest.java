package tenterbook.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.measure.Quantity;

class BoardPairTest {
    private static BoardPair pair(String image, BoardState... states) {
        return new BoardPair(new BoardId("B02"), image, "pear", null, null, null, null, "", List.of(states), "");
    }

    private static BoardState state(String name, Hole... holes) {
        return new BoardState(name, null, "", null, null, List.of(holes));
    }

    @Test
    void aPairAlwaysHasAStateAndWhatWasNotToldIsUnrecorded() {
        BoardPair pair = pair("");

        assertThat(pair.states()).extracting(BoardState::name).containsExactly("I");
        assertThat(pair.length()).isEqualTo(Quantity.UNRECORDED);
        assertThat(pair.title()).isEqualTo("B02");
        assertThat(pair("Heron weir").title()).isEqualTo("B02 Heron weir");
    }

    @Test
    void aRecarvingOpensAStateAndTheOldOneStays() {
        BoardPair pair = pair("Heron weir", state("I"), state("II"));

        assertThat(pair.newest().name()).isEqualTo("II");
        assertThat(pair.state("I")).isPresent();
        assertThat(pair.state("III")).isEmpty();
    }

    @Test
    void twoStatesOrTwoHolesOfOneNameAreRefused() {
        assertThatThrownBy(() -> pair("", state("I"), state(" I ")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("B02 has two states of one name");
        assertThatThrownBy(() -> state("I", new Hole("a", 1.0, 2.0, ""), new Hole("a ", null, null, "")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("two holes alike");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", " ", "a/b", "../up", "-x", "a b", "12345678901234567890123456789012345678901", "a\u0000"})
    void aNameThatCannotStandInAnAddressIsRefused(String name) {
        assertThatThrownBy(() -> new BoardId(name))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("A board pair is named with up to 40 letters");
    }
}
