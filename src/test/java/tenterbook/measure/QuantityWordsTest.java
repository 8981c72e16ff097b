package tenterbook.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityWordsTest {
    /** Worked out with the exact factors of NIST Handbook 44, appendix C, to three digits. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "180 cm, CENTIMETRE, 180 cm, 70.9 in",
                "4 m, CENTIMETRE, 400 cm, 4.37 yd",
                "1 1/2 yd, CENTIMETRE, 137 cm, 54 in",
                "1/2 in, CENTIMETRE, 12.7 mm, 0.5 in",
                "6 to 8 in, CENTIMETRE, 15.2–20.3 cm, 6–8 in",
                "about 2 oz, GRAM, about 56.7 g, about 2 oz",
                "3 lb, GRAM, 1.36 kg, 3 lb",
                "8 momme, MOMME, 34.7 g/m², 1.02 oz/yd²",
                "80 L, LITRE, 80 L, 21.1 gal",
                "1 gal, LITRE, 3.79 L, 1 gal",
                "38 °C, CELSIUS, 38 °C, 100 °F",
                "at least 100 F, CELSIUS, at least 37.8 °C, at least 100 °F",
                "up to 2 kg, GRAM, up to 2 kg, up to 4.41 lb",
                "6-8, COUNT, -, -",
                "40 min, MINUTE, -, -",
                "forgot, CENTIMETRE, -, -"
            })
    void quantitiesAreSaidInMetricAndInUsMeasure(String text, Unit usual, String metric, String us) {
        Quantity quantity = QuantityText.read(text, usual);

        assertThat(QuantityWords.metric(quantity).map(QuantityWordsTest::plain).orElse(null))
                .isEqualTo(metric);
        assertThat(QuantityWords.us(quantity).map(QuantityWordsTest::plain).orElse(null))
                .isEqualTo(us);
    }

    private static String plain(String words) {
        return words.replace('\u00a0', ' ');
    }

    @ParameterizedTest
    @CsvSource({"6 h, for 6 h", "forgot, how long: forgot", "overnight, overnight", "about 2 days, for about 2 days"})
    void howLongSomethingLastedReadsAsASentenceDoes(String entered, String words) {
        assertThat(QuantityWords.lasting(QuantityText.read(entered, Unit.MINUTE))
                        .inEnglish())
                .isEqualTo(words);
    }

    @Test
    void whatWasEnteredIsSaidAsItWasEntered() {
        assertThat(QuantityWords.entered(QuantityText.read("about 1 1/2 yd", Unit.CENTIMETRE)))
                .isEqualTo("about 1 1/2 yd");
        assertThat(QuantityWords.entered(Quantity.UNRECORDED)).isEqualTo("not recorded");
        assertThat(QuantityWords.value(Quantity.UNRECORDED)).isEqualTo("unknown");
        assertThat(QuantityWords.value(QuantityText.read("pH 10.8", Unit.PH))).isEqualTo("pH\u00a010.8");
        assertThat(QuantityWords.value(QuantityText.read("30:1", Unit.RATIO))).isEqualTo("30:1");
    }

    /** The words that were typed stay; only the marks between and behind numbers are those of this program. */
    @ParameterizedTest
    @CsvSource({
        "6-8 min, MINUTE, 6–8 min",
        "about 6 to 8 min, MINUTE, about 6–8 min",
        "60 - 65 °C, CELSIUS, 60–65 °C",
        "1 1/2-2 yd, CENTIMETRE, 1 1/2–2 yd",
        "15%, PERCENT, 15 %",
        "10-15% wof, PERCENT, 10–15 % wof",
        "30 : 1, RATIO, 30:1",
        "20 to 1, RATIO, 20:1",
        "20 to 40, RATIO, 20–40:1",
        "30, RATIO, 30:1",
        "12 counted, COUNT, 12 counted"
    })
    void rangesRatiosAndPercentHaveOneFormHoweverTheyWereTyped(String typed, Unit usual, String shown) {
        assertThat(plain(QuantityWords.withAssumedUnit(QuantityText.read(typed, usual))
                        .inEnglish()))
                .isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "0.0012345, 0.00123", "1, 1", "12.345, 12.3", "99.95, 100", "1234.5, 1235", "1e7, 10000000"})
    void numbersHaveThreeDigitsOrAreWhole(double value, String said) {
        assertThat(QuantityWords.number(value)).isEqualTo(said);
    }

    @Test
    void aQuantityIsFiniteAndRunsForwards() {
        assertThatThrownBy(() -> Quantity.between(Double.NaN, Double.NaN, Unit.GRAM, Basis.COMPUTED))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Quantity.between(2, 1, Unit.GRAM, Basis.COMPUTED))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("from the smaller to the larger");
        assertThatThrownBy(() -> new Quantity("6", 6.0, 6.0, null, Basis.MEASURED, false))
                .isInstanceOf(NullPointerException.class)
                .hasMessageContaining("needs its unit");
    }
}
