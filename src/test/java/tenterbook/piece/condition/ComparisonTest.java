package tenterbook.piece.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Written;

class ComparisonTest {
    private final Examination before = Reports.of(
            "E24-001",
            "2024-03-01",
            "",
            Reports.seen(1, "stain", "8 mm", null),
            Reports.seen(2, "loose thread", "3 cm", null),
            Reports.seen(3, "crease", "", null),
            Reports.seen(4, "soiling", "", null),
            Reports.seen(5, "dust", "", ChangeSinceLast.GONE));

    private static Change.Kind kind(Comparison comparison, int number) {
        return comparison.changes().stream()
                .filter(change -> change.number() == number)
                .findFirst()
                .orElseThrow()
                .kind();
    }

    @Test
    void everyThingOfEitherIsToldAndSilenceIsNeverTakenForGone() {
        Examination after = Reports.of(
                "E24-002",
                "2024-09-30",
                "E24-001",
                Reports.seen(1, "stain", "12 mm", ChangeSinceLast.WORSE),
                Reports.seen(2, "loose thread", "3 cm", ChangeSinceLast.STILL_THERE),
                Reports.seen(3, "crease", "", ChangeSinceLast.GONE),
                Reports.seen(6, "hole", "2 mm", null));

        Comparison comparison = Comparison.of(before, after);

        assertThat(comparison.changes()).extracting(Change::number).containsExactly(1, 2, 3, 4, 6);
        assertThat(kind(comparison, 1)).isEqualTo(Change.Kind.WORSE);
        assertThat(kind(comparison, 2)).isEqualTo(Change.Kind.UNCHANGED);
        assertThat(kind(comparison, 3)).isEqualTo(Change.Kind.GONE);
        assertThat(kind(comparison, 4)).isEqualTo(Change.Kind.NOT_CHECKED);
        assertThat(kind(comparison, 6)).isEqualTo(Change.Kind.NEW);
        assertThat(comparison.changes().get(0).differs())
                .extracting(Written::inEnglish)
                .containsExactly("extent 12 mm, was 8 mm");
        assertThat(comparison.inWords().inEnglish()).isEqualTo("1 new, 1 worse, 1 gone, 1 still there, 1 not checked");
        assertThat(comparison.changes()).allMatch(change -> change.doubt() == null);
    }

    @Test
    void whatWasGoneBeforeAndIsSilentNowIsNotToldAgain() {
        assertThat(Comparison.of(before, Reports.of("E24-002", "2024-09-30", "E24-001"))
                        .changes())
                .extracting(Change::number)
                .containsExactly(1, 2, 3, 4);
    }

    @Test
    void anotherStateOfTheWholeIsStatedAndNotDeniedWhereNothingIsListed() {
        Examination good = Reports.of("E24-001", "2024-03-01", "");
        Examination fair = Reports.judged(Overall.FAIR, "E24-002", "2024-09-30", "E24-001");
        assertThat(Comparison.of(good, fair).inWords().inEnglish())
                .isEqualTo("overall condition: good, now fair; no observation is listed in either");
        assertThat(Comparison.of(good, Reports.judged(null, "E24-002", "2024-09-30", "E24-001"))
                        .inWords()
                        .inEnglish())
                .startsWith("overall condition: good, now not recorded; ");
        assertThat(Comparison.of(
                                good,
                                Reports.of("E24-002", "2024-09-30", "E24-001", Reports.seen(1, "stain", "", null)))
                        .inWords()
                        .inEnglish())
                .isEqualTo("1 new");
    }

    @Test
    void whatDoesNotGoTogetherIsDoubtedAndNotMended() {
        Examination after = Reports.of(
                "E24-002",
                "2024-09-30",
                "E24-001",
                Reports.seen(1, "stain", "12 mm", ChangeSinceLast.STILL_THERE),
                Reports.seen(2, "loose thread", "1 cm", ChangeSinceLast.WORSE),
                Reports.seen(6, "hole", "2 mm", ChangeSinceLast.STILL_THERE));

        List<Change> changes = Comparison.of(before, after).changes();

        assertThat(changes.get(0).doubt().inEnglish())
                .isEqualTo("Said to be ‘still there’, yet its extent went from 8 mm to 12 mm.");
        assertThat(changes.get(0).kind()).isEqualTo(Change.Kind.UNCHANGED);
        assertThat(changes.get(1).doubt().inEnglish()).contains("‘worse’", "3 cm to 1 cm");
        assertThat(changes.get(4).doubt().inEnglish()).contains("the earlier examination does not have it");
    }

    @Test
    void lengthsThatMayBeTheSameLeaveNoDoubt() {
        Examination roughly = Reports.of(
                "E24-002",
                "2024-09-30",
                "E24-001",
                Reports.seen(1, "stain", "6 to 10 mm", ChangeSinceLast.STILL_THERE),
                Reports.seen(2, "loose thread", "about 2 cm", ChangeSinceLast.STILL_THERE),
                Reports.seen(3, "crease", "forgot", ChangeSinceLast.STILL_THERE));
        assertThat(Comparison.of(before, roughly).changes()).allMatch(change -> change.doubt() == null);
    }

    @Test
    void examinationsOfTwoPiecesAreNotCompared() {
        Examination other = new Examination(
                new ExaminationId("E24-009"),
                new PieceNumber("V24-001"),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
        assertThatThrownBy(() -> Comparison.of(before, other)).hasMessageContaining("V24-013 and V24-001");
    }
}
