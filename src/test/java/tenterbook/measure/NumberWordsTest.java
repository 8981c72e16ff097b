package tenterbook.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Currency;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.words.Conventions;
import tenterbook.words.Conventions.DateOrder;

class NumberWordsTest {
    private static final Conventions PORTUGUESE =
            new Conventions(Locale.forLanguageTag("pt-PT"), ',', DateOrder.DAY_FIRST, ZoneId.of("Europe/Lisbon"));
    private static final LocalDate DAY = LocalDate.of(2024, 3, 4);

    @ParameterizedTest
    @CsvSource({"2.25,1,2.3", "2,2,2.00", "-0.04,1,0.0", "12345.6,0,12346"})
    void aNumberHasTheDecimalsAskedForAndNoGroupingMarks(double value, int decimals, String written) {
        assertThat(NumberWords.decimals(value, decimals).inEnglish()).isEqualTo(written);
    }

    @ParameterizedTest
    @CsvSource({"2.0,2", "0.125,0.125", "0,0", "100,100", "1e-7,0.0000001"})
    void aPlainNumberIsExact(double value, String written) {
        assertThat(NumberWords.plain(value).inEnglish()).isEqualTo(written);
    }

    @Test
    void theDecimalMarkIsTheReaders() {
        assertThat(NumberWords.decimals(2.5, 1).in(PORTUGUESE)).isEqualTo("2,5");
        assertThat(QuantityWords.understood(QuantityText.read("1.5 to 2 kg", Unit.GRAM))
                        .in(PORTUGUESE))
                .isEqualTo("1,5–2\u00a0kg");
        assertThat(new Money(new BigDecimal("180.50"), Currency.getInstance("EUR")).in(PORTUGUESE))
                .isEqualTo("180,50\u00a0EUR");
    }

    /** SI Brochure, 9th edition, 5.4.7: a space stands between the number and the sign (from memory). */
    @Test
    void aSpaceStandsBeforeThePercentSign() {
        assertThat(NumberWords.percent(0.444, 0).inEnglish()).isEqualTo("44\u00a0%");
        assertThat(NumberWords.percents(0.4, 0.6, 0).inEnglish()).isEqualTo("40–60\u00a0%");
        assertThat(QuantityWords.value(QuantityText.read("15%", Unit.PERCENT))).isEqualTo("15\u00a0%");
    }

    @Test
    void aDayIsWrittenInTheReadersOrderAndLanguage() {
        assertThat(DateWords.day(DAY).inEnglish()).isEqualTo("4 March 2024");
        assertThat(DateWords.day(DAY).in(ordered(DateOrder.MONTH_FIRST))).isEqualTo("March 4, 2024");
        assertThat(DateWords.day(DAY).in(ordered(DateOrder.YEAR_FIRST))).isEqualTo("2024-03-04");
        assertThat(DateWords.day(DAY).in(PORTUGUESE)).contains("março", "2024");
    }

    private static Conventions ordered(DateOrder order) {
        return new Conventions(Locale.UK, '.', order, ZoneId.of("Asia/Tokyo"));
    }

    /** A zone far in the east: the day there is already the next. */
    @Test
    void anInstantIsShownInTheReadersZone() {
        Instant late = Instant.parse("2024-03-04T22:05:31Z");
        assertThat(DateWords.moment(late).in(ordered(DateOrder.DAY_FIRST))).isEqualTo("5 March 2024, 07:05");
        assertThat(DateWords.moment(late).in(PORTUGUESE)).endsWith(", 22:05");
        assertThat(DateWords.day(late).in(ordered(DateOrder.YEAR_FIRST))).isEqualTo("2024-03-05");
    }
}
