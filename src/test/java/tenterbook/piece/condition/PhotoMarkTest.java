package tenterbook.piece.condition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PhotoMarkTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            42,31           | 0.42  | 0.31
            42.5 % , 31.25 %| 0.425 | 0.3125
            0 100           | 0     | 1
            7;8             | 0.07  | 0.08
            """)
    void aPointIsReadInPercent(String typed, double left, double top) {
        assertThat(PhotoMark.read(Reports.FRONT, typed)).isEqualTo(PhotoMark.point(Reports.FRONT, left, top));
    }

    @ParameterizedTest
    @ValueSource(strings = {"40,30 55,44", "55,44 40,30", "40,44 to 55,30", "55 30 ; 40 44"})
    void anAreaIsReadFromAnyTwoOppositeCorners(String typed) {
        assertThat(PhotoMark.read(Reports.FRONT, typed)).isEqualTo(new PhotoMark(Reports.FRONT, 0.4, 0.3, 0.55, 0.44));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "left", "42", "42,31,7", "101,5", "-3,5", "4,5 6", "1e1,5"})
    void anythingElseIsRefusedWithWhatWasExpected(String typed) {
        assertThatThrownBy(() -> PhotoMark.read(Reports.FRONT, typed))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("“" + typed + "” was not understood")
                .hasMessageContaining("percent across and down");
    }

    @Property
    void whatIsWrittenIsReadBackWithinAMillionth(
            @ForAll @DoubleRange(min = 0, max = 1) double left,
            @ForAll @DoubleRange(min = 0, max = 1) double top,
            @ForAll @DoubleRange(min = 0, max = 1) double right,
            @ForAll @DoubleRange(min = 0, max = 1) double bottom) {
        PhotoMark mark = new PhotoMark(
                Reports.FRONT,
                Math.min(left, right),
                Math.min(top, bottom),
                Math.max(left, right),
                Math.max(top, bottom));
        PhotoMark back = PhotoMark.read(Reports.FRONT, mark.percent());
        assertThat(Math.abs(back.left() - mark.left())).isLessThan(1e-6);
        assertThat(Math.abs(back.bottom() - mark.bottom())).isLessThan(1e-6);
        assertThat(PhotoMark.read(Reports.FRONT, back.percent())).isEqualTo(back);
    }

    @Test
    void aMarkOutsideThePictureOrByHalfIsRefused() {
        assertThatThrownBy(() -> PhotoMark.point(Reports.FRONT, 1.2, 0)).hasMessageContaining("within the picture");
        assertThatThrownBy(() -> PhotoMark.point(Reports.FRONT, Double.NaN, 0)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> new PhotoMark(Reports.FRONT, 0, 0, 0.5, null)).hasMessageContaining("only one");
        assertThatThrownBy(() -> new PhotoMark(Reports.FRONT, 0.5, 0, 0.4, 1.0)).hasMessageContaining("upper left");
        assertThatThrownBy(() -> PhotoMark.point(null, 0, 0)).hasMessageContaining("none was named");
    }
}
