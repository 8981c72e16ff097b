package tenterbook.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitTest {
    /**
     * Exact definitions: NIST Handbook 44, appendix C, and NIST SP 811, appendix B (inch 25.4 mm, yard 0.9144 m, pound
     * 453.59237 g, ounce 1/16 pound, US gallon 231 cubic inches = 3.785411784 L, fluid ounce 1/128 gallon). Momme: common
     * practice.
     */
    @ParameterizedTest
    @CsvSource({
        "INCH, MILLIMETRE, 25.4",
        "FOOT, METRE, 0.3048",
        "YARD, METRE, 0.9144",
        "SQUARE_YARD, SQUARE_METRE, 0.83612736",
        "POUND, GRAM, 453.59237",
        "OUNCE, GRAM, 28.349523125",
        "US_GALLON, LITRE, 3.785411784",
        "FLUID_OUNCE, MILLILITRE, 29.5735295625",
        "MOMME, GRAM_PER_SQUARE_METRE, 4.340",
        "OUNCE_PER_SQUARE_YARD, GRAM_PER_SQUARE_METRE, 33.905747474882295",
        "OUNCE_PER_GALLON, GRAM_PER_LITRE, 7.489151707306039",
        "KILOGRAM, GRAM, 1000",
        "MILLIGRAM, GRAM, 0.001",
        "HOUR, MINUTE, 60",
        "DAY, HOUR, 24",
        "SECOND, MINUTE, 0.016666666666666666"
    })
    void aUnitHasItsDefinedSize(Unit from, Unit to, double factor) {
        assertThat(from.convert(1, to)).isCloseTo(factor, within(factor * 1e-14));
    }

    /** Fixed points of the scales: water freezes at 32 °F and boils at 212 °F; the scales meet at −40 (NIST SP 811). */
    @ParameterizedTest
    @CsvSource({"0, 32", "100, 212", "-40, -40", "38, 100.4", "37, 98.6"})
    void temperaturesConvertByTheirFixedPoints(double celsius, double fahrenheit) {
        assertThat(Unit.CELSIUS.convert(celsius, Unit.FAHRENHEIT)).isCloseTo(fahrenheit, within(1e-12));
        assertThat(Unit.FAHRENHEIT.convert(fahrenheit, Unit.CELSIUS)).isCloseTo(celsius, within(1e-12));
    }

    @Property
    void thereAndBackIsTheSameAgain(@ForAll Unit from, @ForAll @DoubleRange(min = 0, max = 1e6) double value) {
        Assume.that(from != Unit.NIGHT);

        assertThat(Arrays.stream(Unit.values()).filter(to -> to != Unit.NIGHT && to.dimension() == from.dimension()))
                .allSatisfy(to -> assertThat(to.convert(from.convert(value, to), from))
                        .isCloseTo(value, within(1e-9 * (1 + value))));
    }

    @Test
    void aNightHasNoFixedLengthAndUnlikeThingsDoNotConvert() {
        assertThat(Unit.NIGHT.convert(1, Unit.HOUR)).isNaN();
        assertThat(QuantityText.read("overnight", Unit.HOUR).in(Unit.HOUR).known())
                .isFalse();
        assertThatThrownBy(() -> Unit.GRAM.convert(1, Unit.LITRE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gram cannot be turned into litre");
    }

    @Test
    void everyUnitIsReadBySymbolAndNoWritingNamesTwoOfOneDimension() {
        assertThat(Arrays.stream(Unit.values()).filter(unit -> !unit.symbol().isEmpty()))
                .allSatisfy(unit -> assertThat(Unit.written(unit.symbol(), unit.dimension()))
                        .contains(unit));
        assertThat(Unit.written("G/M2", Dimension.AREAL_WEIGHT)).contains(Unit.GRAM_PER_SQUARE_METRE);
        assertThat(Unit.written("mm", Dimension.LENGTH)).contains(Unit.MILLIMETRE);
        assertThat(Unit.written("mm", Dimension.AREAL_WEIGHT)).contains(Unit.MOMME);
        assertThat(Unit.written("g", Dimension.VOLUME)).isEmpty();
    }
}
