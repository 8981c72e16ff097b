package tenterbook.web.found;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.web.found.ComparedPieces.Verdict.DIFFERS;
import static tenterbook.web.found.ComparedPieces.Verdict.NOT_RECORDED;
import static tenterbook.web.found.ComparedPieces.Verdict.PERHAPS;
import static tenterbook.web.found.ComparedPieces.Verdict.SAME;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.measure.DateText;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;

/** When values side by side are said to differ, and what a spreadsheet is given. */
class ComparedPiecesTest {
    private static Cell length(String text) {
        Quantity read = QuantityText.read(text, Unit.CENTIMETRE);
        return Cell.of(read, Unit.CENTIMETRE);
    }

    private static ComparedPieces.Verdict verdict(Cell... cells) {
        return ComparedPieces.verdict(List.of(cells), true);
    }

    @Test
    void theSameAmountInAnotherUnitIsTheSame() {
        assertThat(verdict(length("122 cm"), length("1.22 m"), length("122"))).isEqualTo(SAME);
        assertThat(verdict(length("122 cm"), length("48 in"))).isEqualTo(DIFFERS);
    }

    @Test
    void rangesThatOverlapAreNeitherTheSameNorDifferent() {
        assertThat(verdict(length("6 to 8"), length("7"))).isEqualTo(PERHAPS);
        assertThat(verdict(length("6 to 8"), length("6 to 8"))).isEqualTo(PERHAPS);
        assertThat(verdict(length("6 to 8"), length("9"))).isEqualTo(DIFFERS);
        assertThat(verdict(length("at least 5"), length("900"))).isEqualTo(PERHAPS);
        assertThat(verdict(length("at least 5"), length("4"))).isEqualTo(DIFFERS);
    }

    @Test
    void whatIsNotRecordedIsEqualToNothing() {
        assertThat(verdict(length("6"), Cell.NOT_RECORDED)).isEqualTo(NOT_RECORDED);
        assertThat(verdict(length("6"), length("6"), Cell.NOT_RECORDED)).isEqualTo(NOT_RECORDED);
        assertThat(verdict(length("6"), length("7"), Cell.NOT_RECORDED)).isEqualTo(DIFFERS);
        assertThat(verdict(length("forgot"), length("7"))).isEqualTo(NOT_RECORDED);
        assertThat(verdict(length("forgot"), length("forgot"))).isEqualTo(NOT_RECORDED);
    }

    @Test
    void daysOfAMonthMayBeTheSameDay() {
        PartialDate june = DateText.read("June 2024");
        assertThat(verdict(Cell.of(june), Cell.of(DateText.read("2024-06-05")))).isEqualTo(PERHAPS);
        assertThat(verdict(Cell.of(june), Cell.of(DateText.read("2024-07-05")))).isEqualTo(DIFFERS);
    }

    @Test
    void severalDyesAreTheSameInAnyOrder() {
        assertThat(verdict(Cell.several(List.of("woad", "lac")), Cell.several(List.of("lac", "woad"))))
                .isEqualTo(SAME);
        assertThat(verdict(Cell.several(List.of("woad", "lac")), Cell.several(List.of("woad"))))
                .isEqualTo(DIFFERS);
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+351 000", "-5", "@sum(a1)", "  =1", "\t=1"})
    void noCellOfAFileIsAFormula(String text) {
        assertThat(tenterbook.exchange.sheet.file.FormulaText.written(text)).isEqualTo("'" + text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "woad", "6–8", "a=1", "V24-001"})
    void anOrdinaryCellIsWrittenAsItIs(String text) {
        assertThat(tenterbook.exchange.sheet.file.FormulaText.written(text)).isEqualTo(text);
    }
}
