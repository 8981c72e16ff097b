package tenterbook.piece.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Currency;
import org.junit.jupiter.api.Test;
import tenterbook.measure.Basis;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;

class SaleTaxTest {
    private static final Quantity RATE = Quantity.between(23, 23, Unit.PERCENT, Basis.UNKNOWN);

    private static Money money(String text) {
        return Money.read(text, Currency.getInstance("EUR"));
    }

    private static Event sold(String price, SaleTax tax) {
        return new Event(EventKind.SOLD, null, null, null, money(price), "", "", false, tax);
    }

    @Test
    void whatIsNotRecordedIsNotComputedFromTheRest() {
        SaleTax rateAlone = new SaleTax(TaxWay.INCLUDED, RATE, null);
        assertThat(rateAlone.words().inEnglish().replace('\u00a0', ' ')).isEqualTo("tax of 23 % included");
        assertThat(new SaleTax(TaxWay.ADDED, RATE, money("41.40"))
                        .words()
                        .inEnglish()
                        .replace('\u00a0', ' '))
                .isEqualTo("tax of 23 % added: 41.40 EUR");
        assertThat(SaleTax.UNRECORDED.recorded()).isFalse();
    }

    /** ISO 4217: the euro has two decimals, the yen none. */
    @Test
    void anAmountIsExactToTheSmallestUnitAndOfTheCurrencyOfThePrice() {
        assertThatThrownBy(() -> new Money(new BigDecimal("33.665"), Currency.getInstance("EUR")))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(sold("180", new SaleTax(TaxWay.INCLUDED, RATE, money("33.66")))
                        .tax()
                        .amount())
                .isEqualTo(money("33.66"));
        SaleTax yen = new SaleTax(TaxWay.INCLUDED, RATE, money("34 JPY"));
        assertThatThrownBy(() -> sold("180", yen)).hasMessageContaining("another currency");
        SaleTax more = new SaleTax(TaxWay.INCLUDED, RATE, money("180.01"));
        assertThatThrownBy(() -> sold("180", more)).hasMessageContaining("180.01");
    }

    @Test
    void anAmountNeedsItsWayAndNoTaxHasNone() {
        assertThatThrownBy(() -> new SaleTax(null, RATE, null)).hasMessageContaining("included in the price or added");
        assertThatThrownBy(() -> new SaleTax(TaxWay.NONE, null, money("1"))).hasMessageContaining("No tax charged");
        assertThat(new SaleTax(TaxWay.NONE, null, null).words().inEnglish()).isEqualTo("no tax charged");
    }
}
