package tenterbook.web.clamping;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.web.clamping.HolePlan.Hole;
import tenterbook.web.clamping.HolePlan.Label;

/** Names of holes on the outline of a board. */
class HoleLabelsTest {
    /** A board of 420 by 340 mm whose 24 holes lie in pairs 4 mm apart, as for a beak and a stake. */
    private static HolePlan close() {
        List<Hole> holes = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            holes.add(new Hole(Integer.toString(i + 1), 150 + (i / 2 % 4) * 36 + (i % 2) * 4, 120 + (i / 8) * 20));
        }
        return new HolePlan(420, 340, holes);
    }

    @Test
    void noNameLiesOnAnotherOrOnAHoleAlsoWhereHolesLieClose() {
        HolePlan plan = close();
        List<Label> labels = plan.labels();
        assertThat(labels).hasSize(24);
        double high = plan.letters() * 0.8;
        for (Label label : labels) {
            double halfWide = plan.letters() * 0.58 * label.hole().name().length() / 2;
            for (Hole hole : plan.holes()) {
                assertThat(Math.abs(hole.across() - label.across()) >= halfWide + plan.radius() - 1e-9
                                || Math.abs(hole.down() - label.down()) >= high / 2 + plan.radius() - 1e-9)
                        .as(label + " on " + hole)
                        .isTrue();
            }
            for (Label other : labels) {
                double wide =
                        halfWide + plan.letters() * 0.58 * other.hole().name().length() / 2;
                assertThat(other == label
                                || Math.abs(other.across() - label.across()) >= wide - 1e-9
                                || Math.abs(other.down() - label.down()) >= high - 1e-9)
                        .as(label + " on " + other)
                        .isTrue();
            }
            assertThat(label.across()).isBetween(halfWide, 420 - halfWide);
            assertThat(label.down()).isBetween(high / 2, 340 - high / 2);
        }
        assertThat(labels).anyMatch(label -> !label.line().isEmpty());
    }

    @Test
    void aHoleByItselfHasItsNameAtItsRight() {
        Label label =
                new HolePlan(300, 300, List.of(new Hole("7", 100, 50))).labels().get(0);
        assertThat(label.line()).isEmpty();
        assertThat(label.across()).isGreaterThan(100);
        assertThat(label.down()).isEqualTo(50);
    }

    @Test
    void namesArePlacedAlsoForAHoleTypedOutsideItsBoard() {
        assertThat(new HolePlan(300, 300, List.of(new Hole("7", 900, 50))).labels())
                .hasSize(1);
    }
}
