package tenterbook.piece.cost;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Currency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.measure.Basis;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;

/** Worked by hand; decimals of a currency as ISO 4217 has them. */
class CostingTest {
    private static Money money(String amount, String currency) {
        return Money.read(amount, Currency.getInstance(currency));
    }

    private static Quantity hours(double low, double high) {
        return Quantity.between(low, high, Unit.HOUR, Basis.MEASURED);
    }

    private static Quantity percent(double value) {
        return Quantity.between(value, value, Unit.PERCENT, Basis.MEASURED);
    }

    @Test
    void materialsHoursMarkupAndCommissionGiveThePrices() {
        // 38 + 14 · 32 = 486; · 1.25 = 607.50; / 0.55 = 1104.5454…
        Costing costing = Costing.of(
                new PieceCost(hours(14, 14), money("38", "EUR")),
                new Pricing(money("32", "EUR"), percent(25), percent(45)));
        assertThat(costing.cost().low()).hasToString("486\u00a0EUR");
        assertThat(costing.price().low()).hasToString("607.50\u00a0EUR");
        assertThat(costing.retail().low()).hasToString("1104.55\u00a0EUR");
        assertThat(costing.retail().single()).isTrue();
        assertThat(costing.missing()).isNull();
    }

    @Test
    void aRangeOfHoursStaysARange() {
        Costing costing = Costing.of(
                new PieceCost(hours(12, 14), money("38", "EUR")),
                new Pricing(money("32", "EUR"), percent(0), percent(50)));
        assertThat(costing.cost().low()).hasToString("422\u00a0EUR");
        assertThat(costing.cost().high()).hasToString("486\u00a0EUR");
        assertThat(costing.retail().high()).hasToString("972\u00a0EUR");
    }

    @Test
    void aCurrencyWithoutDecimalsIsRoundedToWholeUnits() {
        Costing costing = Costing.of(
                new PieceCost(hours(1, 1), money("100", "JPY")),
                new Pricing(money("1000", "JPY"), percent(0), percent(30)));
        assertThat(costing.retail().low()).hasToString("1571\u00a0JPY");
    }

    @ParameterizedTest
    @CsvSource({
        "true, false, true, hours",
        "false, true, true, materials",
        "true, true, false, Studio",
        "false, false, false, what is an hour",
    })
    void whatIsNotRecordedIsAskedForAndNeverZero(boolean materials, boolean hours, boolean rate, String asked) {
        Costing costing = Costing.of(
                new PieceCost(hours ? hours(14, 14) : Quantity.UNRECORDED, materials ? money("38", "EUR") : null),
                new Pricing(rate ? money("32", "EUR") : null, percent(25), percent(45)));
        assertThat(costing.cost()).isNull();
        assertThat(costing.missing().inEnglish()).contains(asked);
    }

    @Test
    void withoutMarkupOrCommissionTheLinesBeforeStand() {
        PieceCost cost = new PieceCost(hours(14, 14), money("38", "EUR"));
        Costing noMarkup = Costing.of(cost, new Pricing(money("32", "EUR"), Quantity.UNRECORDED, percent(45)));
        assertThat(noMarkup.cost().low()).hasToString("486\u00a0EUR");
        assertThat(noMarkup.price()).isNull();
        Costing all = Costing.of(cost, new Pricing(money("32", "EUR"), percent(25), percent(100)));
        assertThat(all.price().low()).hasToString("607.50\u00a0EUR");
        assertThat(all.retail()).isNull();
    }

    @Test
    void nothingIsConvertedBetweenCurrencies() {
        Costing costing = Costing.of(
                new PieceCost(hours(14, 14), money("38", "USD")),
                new Pricing(money("32", "EUR"), percent(25), percent(45)));
        assertThat(costing.cost()).isNull();
        assertThat(costing.missing().inEnglish()).contains("38\u00a0USD", "32\u00a0EUR");
    }
}
