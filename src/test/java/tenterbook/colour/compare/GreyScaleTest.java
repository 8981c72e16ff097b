package tenterbook.colour.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Interval;

/** Chips: ISO 105-A02:1993, clause 2.4, as quoted in grey-scale.csv; bands: ISO 105-A05, from memory. */
class GreyScaleTest {
    @Test
    void everyChipHasItsOwnGrade() {
        List<GreyScale.Chip> chips = GreyScale.CHIPS;
        assertThat(chips)
                .extracting(GreyScale.Chip::grade)
                .containsExactly("5", "4-5", "4", "3-4", "3", "2-3", "2", "1-2", "1");
        assertThat(chips)
                .extracting(GreyScale.Chip::difference)
                .containsExactly(0.0, 0.8, 1.7, 2.5, 3.4, 4.8, 6.8, 9.6, 13.6);
        for (GreyScale.Chip chip : chips) {
            assertThat(GreyScale.nearest(chip.difference())).isEqualTo(chip.grade());
        }
        assertThat(GreyScale.nearest(60)).isEqualTo("1");
    }

    @Test
    void gradesChangeHalfWayBetweenChips() {
        List<GreyScale.Chip> chips = GreyScale.CHIPS;
        for (int i = 0; i + 1 < chips.size(); i++) {
            double middle = (chips.get(i).difference() + chips.get(i + 1).difference()) / 2;
            assertThat(GreyScale.nearest(middle - 1e-9)).isEqualTo(chips.get(i).grade());
            assertThat(GreyScale.nearest(middle + 1e-9))
                    .isEqualTo(chips.get(i + 1).grade());
        }
    }

    @Test
    void anEstimateNamesItsBoundsAndSaysWhatItIsNot() {
        GreyScale.Estimate estimate = GreyScale.estimate(3.0, new Interval(1.9, 5.0));
        assertThat(estimate.grade()).isEqualTo("3");
        assertThat(estimate.best()).isEqualTo("4");
        assertThat(estimate.worst()).isEqualTo("2-3");
        assertThat(estimate.sentence().inEnglish())
                .contains("an estimate, not an ISO grade")
                .contains("from 2-3 to 4");
        assertThat(GreyScale.estimate(3.4, new Interval(3.4, 3.4)).sentence().inEnglish())
                .doesNotContain("anywhere");
    }

    @Test
    void aDifferenceThatIsNoneIsRefused() {
        assertThatThrownBy(() -> GreyScale.nearest(-0.1)).hasMessageContaining("-0.1");
        assertThatThrownBy(() -> GreyScale.nearest(Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> new Interval(2, 1)).hasMessageContaining("2.0 to 1.0");
    }
}
