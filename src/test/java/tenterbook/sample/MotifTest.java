package tenterbook.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;

class MotifTest {
    /** Size in mm and number of holes of each board, as the sample studio's list of boards has them. */
    private static final Map<String, int[]> BOARDS = Map.of(
            "B01", new int[] {340, 300, 18},
            "B02-I", new int[] {420, 340, 24},
            "B02-II", new int[] {420, 340, 24},
            "B03", new int[] {360, 260, 9},
            "B04", new int[] {300, 300, 16},
            "B05", new int[] {480, 380, 30},
            "B06-I", new int[] {280, 220, 12},
            "B06-II", new int[] {280, 220, 12});

    @Test
    void everyBoardHasItsSizeAndItsHoles() {
        assertThat(Motifs.STATES).containsExactlyInAnyOrderElementsOf(BOARDS.keySet());
        BOARDS.forEach((state, expected) -> {
            Motif motif = Motifs.of(state);
            assertThat(new int[] {
                        (int) motif.widthMm(),
                        (int) motif.heightMm(),
                        motif.holes().size()
                    })
                    .as(state)
                    .containsExactly(expected);
        });
    }

    @Test
    void landsCoverAFairShareOfEveryBoard() {
        for (String state : Motifs.STATES) {
            assertThat(Motifs.of(state).lands(1.5).mean()).as(state).isBetween(0.2, 0.6);
        }
    }

    @Test
    void everyHoleOpensIntoAChannelAndNotIntoALand() {
        for (String state : Motifs.STATES) {
            Motif motif = Motifs.of(state);
            Field lands = motif.lands(3);
            for (Motif.Hole hole : motif.holes()) {
                assertThat(hole.x()).as(state).isBetween(0.0, motif.widthMm());
                assertThat(hole.y()).as(state).isBetween(0.0, motif.heightMm());
                assertThat(lands.sample(hole.x() * 3, hole.y() * 3))
                        .as("%s at %.0f, %.0f", state, hole.x(), hole.y())
                        .isLessThan(0.5f);
            }
        }
    }

    @Test
    void recuttingChangesTheBoard() {
        for (String board : new String[] {"B02", "B06"}) {
            Field first = Motifs.of(board + "-I").lands(2);
            Field second = Motifs.of(board + "-II").lands(2);
            int changed = 0;
            for (int i = 0; i < first.values.length; i++) {
                changed += Math.abs(first.values[i] - second.values[i]) > 0.5 ? 1 : 0;
            }
            assertThat((double) changed / first.values.length).as(board).isBetween(0.01, 0.3);
        }
    }

    @Test
    void anUnknownBoardIsRefusedWithTheNamesThereAre() {
        assertThatThrownBy(() -> Motifs.of("B99"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("B06-II")
                .hasMessageContaining("B99");
    }

    @Test
    void distanceToALandAgreesWithPlainMeasuring() {
        Field spot = new Field(40, 30);
        spot.values[12 * 40 + 9] = 1;
        Field distance = spot.signedDistance();
        assertThat(distance.at(9 + 12, 12 + 5)).isEqualTo(13f);
        assertThat(distance.at(9, 12)).isEqualTo(-1f);
    }
}
