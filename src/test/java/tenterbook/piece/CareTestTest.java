package tenterbook.piece;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CareTestTest {
    /** Source: ISO 105-A02, nine grades from 5 to 1 in half steps. */
    @ParameterizedTest
    @CsvSource({
        "5, 5, 5",
        "4-5, 4.5, 4-5",
        "4.5, 4.5, 4-5",
        "'4,5', 4.5, 4-5",
        "1-2, 1.5, 1-2",
        "3.0, 3, 3",
        "2/3, 2.5, 2-3"
    })
    void aGradeIsReadAndWrittenAsGradesAre(String text, double grade, String words) {
        assertThat(CareTest.readGrade(text)).isEqualTo(grade);
        assertThat(graded(grade).gradeWords()).isEqualTo(words);
    }

    @ParameterizedTest
    @ValueSource(strings = {"6", "0", "5-6", "4-6", "5-4", "3.7", "good", ""})
    void whatIsNoGradeIsRefused(String text) {
        assertThatThrownBy(() -> CareTest.readGrade(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("half steps");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 5.5, 3.25, Double.NaN})
    void aGradeBetweenTheStepsIsRefused(double grade) {
        assertThatThrownBy(() -> graded(grade)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @CsvSource({
        "'ISO 105-C06:2010, A2S', ISO_105_C06",
        "'EN ISO 105 C06', ISO_105_C06",
        "'iso 105-x12 dry', ISO_105_X12",
        "'ISO105-B02', ISO_105_B02",
        "'ISO 105-E01', ISO_105_E01",
        "'AATCC 61-2A', AATCC_61",
        "'AATCC TM61-2013', AATCC_61",
        "'AATCC Test Method 8', AATCC_8",
        "'AATCC 16.3', AATCC_16",
        "'AATCC 86',",
        "'ISO 105-C10',",
        "'strip in rain water',"
    })
    void aStandardNamedInTheMakersWordsIsKnown(String words, TestStandard standard) {
        assertThat(TestStandard.namedIn(words).orElse(null)).isEqualTo(standard);
    }

    @Test
    void theMakersOwnWordGoesBeforeWhatTheWordsName() {
        CareTest own = new CareTest(
                CareTest.Kind.RUB, null, "after ISO 105-X12, by thumb", null, "", true, TestStandard.OWN, null, null);
        assertThat(own.followed()).contains(TestStandard.OWN);
        assertThat(new CareTest(CareTest.Kind.RUB, null, "by thumb", null, "", true).followed())
                .isEmpty();
    }

    private static CareTest graded(double grade) {
        return new CareTest(CareTest.Kind.RUB, null, "", null, "", true, null, grade, null);
    }
}
