package tenterbook.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTextTest {
    private static Arguments says(String text, Unit usual, Object low, Object high, Unit unit) {
        return Arguments.of(text, usual, number(low), number(high), unit);
    }

    private static Double number(Object value) {
        return value == null ? null : (Double) ((Number) value).doubleValue();
    }

    static Stream<Arguments> readable() {
        return Stream.of(
                says("6", Unit.COUNT, 6, 6, Unit.COUNT),
                says("6-8", Unit.COUNT, 6, 8, Unit.COUNT),
                says("6–8", Unit.COUNT, 6, 8, Unit.COUNT),
                says("6 to 8", Unit.COUNT, 6, 8, Unit.COUNT),
                says("between 6 and 8", Unit.COUNT, 6, 8, Unit.COUNT),
                says("six or seven", Unit.COUNT, 6, 7, Unit.COUNT),
                says("8x", Unit.COUNT, 8, 8, Unit.COUNT),
                says("12 layers", Unit.COUNT, 12, 12, Unit.COUNT),
                says("a dozen", Unit.COUNT, 12, 12, Unit.COUNT),
                says("at least 5", Unit.COUNT, 5, null, Unit.COUNT),
                says("5+", Unit.COUNT, 5, null, Unit.COUNT),
                says("≥ 5", Unit.COUNT, 5, null, Unit.COUNT),
                says("up to 8", Unit.COUNT, null, 8, Unit.COUNT),
                says("< 8", Unit.COUNT, null, 8, Unit.COUNT),
                says("about 25 min", Unit.MINUTE, 25, 25, Unit.MINUTE),
                says("~30", Unit.MINUTE, 30, 30, Unit.MINUTE),
                says("30ish", Unit.MINUTE, 30, 30, Unit.MINUTE),
                says("30 or so", Unit.MINUTE, 30, 30, Unit.MINUTE),
                says("1 h 30 min", Unit.MINUTE, 1.5, 1.5, Unit.HOUR),
                says("1h30min", Unit.MINUTE, 1.5, 1.5, Unit.HOUR),
                says("1 h to 1 h 30 min", Unit.MINUTE, 1, 1.5, Unit.HOUR),
                says("half an hour", Unit.MINUTE, 0.5, 0.5, Unit.HOUR),
                says("half a day", Unit.MINUTE, 0.5, 0.5, Unit.DAY),
                says("10'", Unit.MINUTE, 10, 10, Unit.MINUTE),
                says("overnight", Unit.HOUR, 1, 1, Unit.NIGHT),
                says("2 nights", Unit.HOUR, 2, 2, Unit.NIGHT),
                says("180", Unit.CENTIMETRE, 180, 180, Unit.CENTIMETRE),
                says("1/2 yd", Unit.CENTIMETRE, 0.5, 0.5, Unit.YARD),
                says("½ yd", Unit.CENTIMETRE, 0.5, 0.5, Unit.YARD),
                says("half a yard", Unit.CENTIMETRE, 0.5, 0.5, Unit.YARD),
                says("1 1/2 yd", Unit.CENTIMETRE, 1.5, 1.5, Unit.YARD),
                says("1½ yd", Unit.CENTIMETRE, 1.5, 1.5, Unit.YARD),
                says("⅞ in", Unit.CENTIMETRE, 0.875, 0.875, Unit.INCH),
                says("1/2 - 3/4 in", Unit.CENTIMETRE, 0.5, 0.75, Unit.INCH),
                says("12 in", Unit.CENTIMETRE, 12, 12, Unit.INCH),
                says("12\"", Unit.CENTIMETRE, 12, 12, Unit.INCH),
                says("12 in.", Unit.CENTIMETRE, 12, 12, Unit.INCH),
                says("5'6\"", Unit.CENTIMETRE, 5.5, 5.5, Unit.FOOT),
                says("5’ 6”", Unit.CENTIMETRE, 5.5, 5.5, Unit.FOOT),
                says("1 ft 6 in", Unit.CENTIMETRE, 1.5, 1.5, Unit.FOOT),
                says("1ft6in", Unit.CENTIMETRE, 1.5, 1.5, Unit.FOOT),
                says("1,5 m", Unit.CENTIMETRE, 1.5, 1.5, Unit.METRE),
                says("0,125 m", Unit.CENTIMETRE, 0.125, 0.125, Unit.METRE),
                says("1,200.5 mm", Unit.CENTIMETRE, 1200.5, 1200.5, Unit.MILLIMETRE),
                says("6 in to 8 in", Unit.CENTIMETRE, 6, 8, Unit.INCH),
                says("6 to 8 in", Unit.CENTIMETRE, 6, 8, Unit.INCH),
                says("6 in to 8", Unit.CENTIMETRE, 6, 8, Unit.INCH),
                says("1 in to 8", Unit.CENTIMETRE, 1, 8, Unit.INCH),
                says("10 cm - 1 m", Unit.CENTIMETRE, 0.1, 1, Unit.METRE),
                says("180\u2009cm", Unit.MILLIMETRE, 180, 180, Unit.CENTIMETRE),
                says("180\u202fcm", Unit.MILLIMETRE, 180, 180, Unit.CENTIMETRE),
                says("\u00a0180\u00a0cm\u00a0", Unit.MILLIMETRE, 180, 180, Unit.CENTIMETRE),
                says("1.2 m2", Unit.SQUARE_METRE, 1.2, 1.2, Unit.SQUARE_METRE),
                says("30:1", Unit.RATIO, 30, 30, Unit.RATIO),
                says("30 : 1", Unit.RATIO, 30, 30, Unit.RATIO),
                says("1:30", Unit.RATIO, 30, 30, Unit.RATIO),
                says("30 to 1", Unit.RATIO, 30, 30, Unit.RATIO),
                says("20:1 to 40:1", Unit.RATIO, 20, 40, Unit.RATIO),
                says("1:20-1:40", Unit.RATIO, 20, 40, Unit.RATIO),
                says("20-40:1", Unit.RATIO, 20, 40, Unit.RATIO),
                says("30", Unit.RATIO, 30, 30, Unit.RATIO),
                says("1:1", Unit.RATIO, 1, 1, Unit.RATIO),
                says("pH 10.8", Unit.PH, 10.8, 10.8, Unit.PH),
                says("10,8", Unit.PH, 10.8, 10.8, Unit.PH),
                says("pH 10 to pH 11", Unit.PH, 10, 11, Unit.PH),
                says("about pH 9", Unit.PH, 9, 9, Unit.PH),
                says("38 °C", Unit.CELSIUS, 38, 38, Unit.CELSIUS),
                says("38°", Unit.CELSIUS, 38, 38, Unit.CELSIUS),
                says("100F", Unit.CELSIUS, 100, 100, Unit.FAHRENHEIT),
                says("40-50 C", Unit.CELSIUS, 40, 50, Unit.CELSIUS),
                says("-5 °C", Unit.CELSIUS, -5, -5, Unit.CELSIUS),
                says("\u22125 to 0 °C", Unit.CELSIUS, -5, 0, Unit.CELSIUS),
                says("19 momme", Unit.GRAM_PER_SQUARE_METRE, 19, 19, Unit.MOMME),
                says("19mm", Unit.GRAM_PER_SQUARE_METRE, 19, 19, Unit.MOMME),
                says("45 gsm", Unit.GRAM_PER_SQUARE_METRE, 45, 45, Unit.GRAM_PER_SQUARE_METRE),
                says("45 g/m2", Unit.GRAM_PER_SQUARE_METRE, 45, 45, Unit.GRAM_PER_SQUARE_METRE),
                says("4 oz/yd2", Unit.GRAM_PER_SQUARE_METRE, 4, 4, Unit.OUNCE_PER_SQUARE_YARD),
                says("2 oz", Unit.GRAM, 2, 2, Unit.OUNCE),
                says("2 lb 8 oz", Unit.GRAM, 2.5, 2.5, Unit.POUND),
                says("1.2 kg", Unit.GRAM, 1.2, 1.2, Unit.KILOGRAM),
                says("15 % WOF", Unit.PERCENT, 15, 15, Unit.PERCENT),
                says("15%", Unit.PERCENT, 15, 15, Unit.PERCENT),
                says("3 g/L", Unit.GRAM_PER_LITRE, 3, 3, Unit.GRAM_PER_LITRE),
                says("80 litres", Unit.LITRE, 80, 80, Unit.LITRE),
                says("12 fl oz", Unit.LITRE, 12, 12, Unit.FLUID_OUNCE),
                says("0", Unit.COUNT, 0, 0, Unit.COUNT),
                says("30 (measured)", Unit.GRAM, 30, 30, Unit.GRAM));
    }

    @ParameterizedTest
    @MethodSource("readable")
    void whatPeopleWriteIsRead(String text, Unit usual, Double low, Double high, Unit unit) {
        Quantity quantity = QuantityText.read(text, usual);

        assertThat(quantity.unit()).isEqualTo(unit);
        assertEnd(quantity.low(), low);
        assertEnd(quantity.high(), high);
    }

    private static void assertEnd(Double found, Double expected) {
        if (expected == null) {
            assertThat(found).isNull();
        } else {
            assertThat(found).isCloseTo(expected, within(1e-12));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"forgot", "Forgot", "unknown", "?", "don't know", "not measured", "—"})
    void unknownIsReadAsUnknownAndKeptAsItWasSaid(String text) {
        Quantity quantity = QuantityText.read(text, Unit.COUNT);

        assertThat(quantity.known()).isFalse();
        assertThat(quantity.recorded()).isTrue();
        assertThat(quantity.entered()).isEqualTo(text);
    }

    @Test
    void theExampleOfARefusalFitsTheFieldsUnit() {
        assertThatThrownBy(() -> QuantityText.read("all", Unit.MILLIMETRE))
                .hasMessageEndingWith("Expected something like ‘8 mm’, ‘3 to 5 mm’, ‘about 1/4 in’ or ‘forgot’.");
    }

    @Test
    void nothingIsUnrecordedAndNotZero() {
        assertThat(QuantityText.read(null, Unit.COUNT)).isEqualTo(Quantity.UNRECORDED);
        assertThat(QuantityText.read(" \u2003\t ", Unit.COUNT)).isEqualTo(Quantity.UNRECORDED);
        assertThat(Quantity.UNRECORDED.low()).isNull();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,200 | can be read as 1200 or as 1.200",
                "abc | 'abc' is not a number",
                "1 2 3 | it holds several numbers",
                "1 200 mm | it holds several numbers",
                "6 in 5 | it holds several numbers",
                "6 in 1 ft | it holds several numbers",
                "5 parsecs | 'parsecs' is not a unit like cm",
                "-3 cm | less than nothing",
                "−3 cm | less than nothing",
                "1/0 | divides by nothing",
                "8-6 | the range runs backwards",
                "1 m - 10 cm | the range runs backwards",
                "NaN | not a number",
                "Infinity | not a number",
                "1e5 | is not a unit",
                "1.2.3 | more than one decimal mark",
                "cm | not a number",
                "5 kg | 'kg' is not a unit like cm",
                "to | not a number",
                "- 5 | not a number",
                "() | there is no number in it"
            })
    void whatCannotBeReadIsRefusedWithASentence(String text, String why) {
        assertThatThrownBy(() -> QuantityText.read(text, Unit.CENTIMETRE))
                .isInstanceOf(UnreadableQuantity.class)
                .hasMessageContaining(why)
                .hasMessageStartingWith("“" + text + "” was not understood: ")
                .hasMessageEndingWith("Expected something like ‘180 cm’, ‘1 1/2 yd’, ‘about 60 in’ or ‘forgot’.");
    }

    @Test
    void numbersTooLargeAndTextsTooLongAreRefused() {
        assertThat(QuantityText.read("9".repeat(99), Unit.GRAM).low()).isEqualTo(1e99);
        assertThatThrownBy(() -> QuantityText.read("9".repeat(100) + "9 g", Unit.GRAM))
                .isInstanceOf(UnreadableQuantity.class);
        assertThatThrownBy(() -> QuantityText.read("1.".repeat(150), Unit.GRAM))
                .isInstanceOf(UnreadableQuantity.class)
                .hasMessageContaining("longer than 100 characters")
                .hasMessageContaining("keep the story in the notes");
    }

    @ParameterizedTest
    @CsvSource({
        "40 measured,MEASURED,false",
        "40 g weighed,MEASURED,false",
        "40 from memory,REMEMBERED,false",
        "'measured, 40 I think',REMEMBERED,false",
        "about 40,ESTIMATED,true",
        "nearly 40,ESTIMATED,true",
        "circa 40,ESTIMATED,true",
        "c. 40,ESTIMATED,true",
        "6-8,ESTIMATED,false",
        "40,UNKNOWN,false"
    })
    void howItIsKnownIsReadFromTheWords(String text, Basis basis, boolean about) {
        Quantity quantity = QuantityText.read(text, Unit.GRAM);

        assertThat(quantity.basis()).isEqualTo(basis);
        assertThat(quantity.about()).isEqualTo(about);
    }

    @Provide
    Arbitrary<String> texts() {
        Arbitrary<String> pieces = Arbitraries.of(
                "1",
                "2",
                "30",
                "1/2",
                "½",
                ",",
                ".",
                "-",
                "–",
                " ",
                "  ",
                "\u2009",
                "\u202f",
                "to",
                "and",
                "or",
                "at least ",
                "up to ",
                "+",
                "~",
                "about ",
                "ish",
                "cm",
                "in",
                "\"",
                "'",
                "ft",
                "yd",
                "yd2",
                "%",
                ":1",
                "1:",
                "pH ",
                "°",
                "C",
                "overnight",
                "night",
                "half",
                "half a",
                "a dozen",
                "(",
                ")",
                "min",
                "h",
                "measured",
                "/0",
                "999999999999",
                "<",
                ">=",
                "..",
                "mm");
        return Arbitraries.oneOf(
                pieces.list().ofMinSize(1).ofMaxSize(7).map(parts -> String.join("", parts)),
                pieces.list().ofMinSize(1).ofMaxSize(7).map(parts -> String.join(" ", parts)),
                Arbitraries.strings().all().ofMaxLength(300),
                Arbitraries.strings().ascii().ofMaxLength(40),
                Arbitraries.strings().numeric().withChars(".,-/ '").ofMaxLength(99));
    }

    @Property(tries = 20_000)
    void anyTextIsReadAsItStandsOrRefused(@ForAll("texts") String text, @ForAll Unit usual) {
        Quantity quantity;
        try {
            quantity = QuantityText.read(text, usual);
        } catch (UnreadableQuantity refused) {
            assertThat(refused).hasMessageContaining("was not understood");
            return;
        }
        if (text.isBlank()) {
            assertThat(quantity).isEqualTo(Quantity.UNRECORDED);
            return;
        }
        assertThat(quantity.entered()).isIn(text.strip(), "");
        if (quantity.bounded()) {
            assertThat(quantity.low()).isLessThanOrEqualTo(quantity.high());
        }
        if (quantity.known()) {
            assertThat(quantity.unit().dimension()).isEqualTo(usual.dimension());
            assertThat(quantity.entered()).isEqualTo(text.strip());
            QuantityWords.value(quantity);
            QuantityWords.metric(quantity);
            QuantityWords.us(quantity);
        }
    }

    @Property
    void aPlainNumberComesBackAsItself(@ForAll @DoubleRange(min = 0, max = 1e9) double value, @ForAll Unit usual) {
        String text = java.math.BigDecimal.valueOf(value).toPlainString();

        Quantity quantity = QuantityText.read(text, usual);

        assertThat(quantity.low()).isEqualTo(value);
        assertThat(quantity.high()).isEqualTo(value);
        assertThat(quantity.unit()).isEqualTo(usual);
        assertThat(quantity.entered()).isEqualTo(text);
    }
}
