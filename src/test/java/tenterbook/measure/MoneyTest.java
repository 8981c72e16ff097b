package tenterbook.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Currency;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MoneyTest {
    private static final Currency EURO = Currency.getInstance("EUR");

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "180 | 180.00 | EUR",
                "€ 180 | 180.00 | EUR",
                "180.50 EUR | 180.50 | EUR",
                "180,50 € | 180.50 | EUR",
                "180.5 | 180.50 | EUR",
                "180. | 180.00 | EUR",
                "$1,200 | 1200.00 | USD",
                "1.200 | 1200.00 | EUR",
                "1.200,50 | 1200.50 | EUR",
                "1,200.50 | 1200.50 | EUR",
                "1'200.50 chf | 1200.50 | CHF",
                "1 200,50 | 1200.50 | EUR",
                "1\u202f234\u202f567,80 € | 1234567.80 | EUR",
                "¥18000 | 18000 | JPY",
                "SEK 180 | 180.00 | SEK",
                "180.505 | 180505.00 | EUR",
                "0 | 0.00 | EUR"
            })
    void pricesAreReadAsPeopleWriteThem(String text, BigDecimal amount, String currency) {
        assertThat(Money.read(text, EURO)).isEqualTo(new Money(amount, Currency.getInstance(currency)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "-5",
                "abc",
                "€180€",
                "EUR 5 USD",
                "180.5055",
                "1,2,3",
                "180 50",
                "1.2.3",
                "1,200,50",
                "1,200.500",
                "¥180.50",
                "QQQ 5",
                "5 to 6",
                "NaN",
                "€",
                "1 2345",
                "1e9"
            })
    void whatIsNoSingleAmountIsRefusedWithASentence(String text) {
        assertThatThrownBy(() -> Money.read(text, EURO))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("“" + text + "” was not understood as a price: ");
    }

    /** ISO 4217, list one: the dinars of Kuwait, Bahrain, Jordan and Tunisia have three decimals. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1.005 KWD | 1.005 | KWD",
                "KWD 180.5 | 180.500 | KWD",
                "1,180.250 BHD | 1180.250 | BHD",
                "1.180,250 JOD | 1180.250 | JOD",
                "0,250 TND | 0.250 | TND",
                "1 180 KWD | 1180.000 | KWD",
                "1.180.250 KWD | 1180250.000 | KWD"
            })
    void threeDecimalsAreReadWhereTheCurrencyHasThree(String text, BigDecimal amount, String currency) {
        assertThat(Money.read(text, EURO)).isEqualTo(new Money(amount, Currency.getInstance(currency)));
    }

    @Test
    void aCommaThatMayBeOfEitherKindIsAskedAboutWhereTheCurrencyHasThreeDecimals() {
        assertThatThrownBy(() -> Money.read("1,005 KWD", EURO))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("1.005")
                .hasMessageContaining("1005.000");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e400000", "1e999999999", "1E+2147483647", "1e-2147483647", "NaN", "", "٣", "0x10", "5 "})
    void anAmountIsPlainDigits(String text) {
        assertThatThrownBy(() -> Money.amount(text)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @CsvSource({"1e40,EUR", "1e999999999,EUR", "1e-2147483647,EUR", "1.005,EUR", "5.123,JPY"})
    void anAmountThatNoCurrencyHoldsIsRefusedBeforeItIsScaled(BigDecimal amount, String currency) {
        assertThatThrownBy(() -> new Money(amount, Currency.getInstance(currency)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void nothingIsNoPrice() {
        assertThat(Money.read(null, EURO)).isNull();
        assertThat(Money.read("  ", EURO)).isNull();
        assertThatThrownBy(() -> new Money(new BigDecimal("-1"), EURO)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @CsvSource({"180,EUR,180\u00a0EUR", "180.5,EUR,180.50\u00a0EUR", "18000,JPY,18000\u00a0JPY", "180,SEK,180\u00a0SEK"
    })
    void aPriceIsWrittenWithTheCodeOfItsCurrency(BigDecimal amount, String currency, String said) {
        assertThat(new Money(amount, Currency.getInstance(currency))).hasToString(said);
    }

    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.oneOf(
                Arbitraries.strings()
                        .withChars("0123456789.,' €$£EURusd\u00a0\u202f-")
                        .ofMaxLength(60),
                Arbitraries.strings().all().ofMaxLength(300));
    }

    @Property(tries = 10_000)
    void anyTextIsReadOrRefused(@ForAll("texts") String text) {
        Money money;
        try {
            money = Money.read(text, EURO);
        } catch (IllegalArgumentException refused) {
            assertThat(refused).hasMessageContaining("was not understood as a price");
            return;
        }
        if (money != null) {
            assertThat(money.amount().signum()).isNotNegative();
            assertThat(Money.read(money.toString(), money.currency())).isEqualTo(money);
        }
    }
}
