package tenterbook.piece.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tenterbook.measure.Digest;

class ExaminationTest {
    @Test
    void aMarkOnAPhotographOutsideTheExaminationIsRefused() {
        Observation stain =
                Reports.seen(1, "stain", "8 mm", null, PhotoMark.point(new Digest("c".repeat(64)), 0.5, 0.5));
        assertThatThrownBy(() -> Reports.of("E24-001", "2024-09-30", "", stain))
                .hasMessageContaining("Observation 1 is marked on a photograph that is not in this examination");
    }

    @Test
    void twoThingsNeverShareANumber() {
        assertThatThrownBy(() -> Reports.of(
                        "E24-001",
                        "2024-09-30",
                        "",
                        Reports.seen(2, "stain", "", null),
                        Reports.seen(2, "hole", "", null)))
                .hasMessageContaining("Two observations have the number 2");
    }

    @Test
    void anObservationSaysWhatWasSeen() {
        assertThatThrownBy(() -> Reports.seen(3, " ", "", null)).hasMessageContaining("Observation 3 does not say");
        assertThatThrownBy(() -> Reports.seen(0, "hole", "", null)).hasMessageContaining("from 1 to 999");
    }

    @Test
    void whatIsGoneIsNotLookedForAgainAndItsNumberIsNeverGivenAnew() {
        Examination first = Reports.of(
                "E24-001", "2024-03-01", "", Reports.seen(1, "stain", "8 mm", null), Reports.seen(2, "dust", "", null));
        Examination second = Reports.of(
                "E24-002",
                "2024-09-30",
                "E24-001",
                Reports.seen(1, "stain", "8 mm", ChangeSinceLast.STILL_THERE),
                Reports.seen(2, "dust", "", ChangeSinceLast.GONE));

        assertThat(NextExamination.toBeChecked(second))
                .singleElement()
                .isEqualTo(Reports.seen(1, "stain", "8 mm", ChangeSinceLast.NOT_CHECKED));
        assertThat(NextExamination.number(List.of(first, second))).isEqualTo(3);
        assertThat(NextExamination.number(List.of())).isEqualTo(1);
    }

    @Test
    void examinationsStandInOrderOfTheirDayAndUnknownDaysFirst() {
        assertThat(Stream.of(
                                Reports.of("E24-003", "2024-09-30", ""),
                                Reports.of("E24-004", "spring 2019", ""),
                                Reports.of("E24-002", "2024-09-30", ""),
                                Reports.of("E24-005", "forgot", ""))
                        .sorted(Examination.IN_TIME)
                        .map(each -> each.id().value()))
                .containsExactly("E24-005", "E24-004", "E24-002", "E24-003");
    }

    @Test
    void theOfferedWordsHoldThoseOfEveryWorkroomEachOnce() {
        assertThat(ConditionWords.what())
                .extracting(ConditionWords.Word::word)
                .contains(
                        "crease",
                        "tear",
                        "hole",
                        "stain",
                        "fading",
                        "bleed",
                        "soiling",
                        "insect damage",
                        "loose thread")
                .doesNotHaveDuplicates();
        assertThat(ConditionWords.zones())
                .extracting(ConditionWords.Word::word)
                .contains("front", "back", "upper edge", "hanging device")
                .doesNotHaveDuplicates();
        assertThat(ConditionWords.means()).extracting(ConditionWords.Word::word).contains("raking light");
    }
}
