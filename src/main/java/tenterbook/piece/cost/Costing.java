package tenterbook.piece.cost;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.words.Message;

/**
 * The cost of a piece and the prices that follow: materials and hours at their rate, with the markup, and with the commission
 * that a seller keeps of the price. Computed exactly, and rounded to the currency's smallest unit at the end of each line,
 * halves away from zero (common practice). A range of hours gives a range.
 *
 * @param work what the hours cost; null where that cannot be computed, as are the next three
 * @param cost materials and work
 * @param price with the markup
 * @param retail the price of which {@code price} is left after the commission
 * @param missing what would have to be recorded for the next line, in a sentence; null where nothing is
 */
public record Costing(
        @Nullable Span work,
        @Nullable Span cost,
        @Nullable Span price,
        @Nullable Span retail,
        @Nullable Message missing) {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    /** Lowest and highest, equal where there is one amount. */
    public record Span(Money low, Money high) {
        public boolean single() {
            return low.equals(high);
        }
    }

    /** Two ends of an exact amount. */
    private record Exact(BigDecimal low, BigDecimal high) {
        Exact times(BigDecimal one, BigDecimal other) {
            return new Exact(low.multiply(one), high.multiply(other));
        }

        Exact plus(BigDecimal more) {
            return new Exact(low.add(more), high.add(more));
        }

        /** What has to be asked so that this is left after a share is taken away. */
        Exact before(BigDecimal least, BigDecimal most) {
            return new Exact(
                    low.divide(BigDecimal.ONE.subtract(least), MathContext.DECIMAL64),
                    high.divide(BigDecimal.ONE.subtract(most), MathContext.DECIMAL64));
        }

        Span in(Currency currency) {
            return new Span(money(low, currency), money(high, currency));
        }

        private static Money money(BigDecimal amount, Currency currency) {
            int decimals = Math.max(0, currency.getDefaultFractionDigits());
            return new Money(amount.setScale(decimals, RoundingMode.HALF_UP), currency);
        }
    }

    public static Costing of(PieceCost piece, Pricing studio) {
        Money materials = piece.materials();
        Money rate = studio.hourlyRate();
        Quantity hours = piece.hours().in(Unit.HOUR);
        if (materials == null || rate == null || !hours.bounded()) {
            List<String> lacking = new ArrayList<>();
            if (materials == null) {
                lacking.add("materials");
            }
            if (!hours.bounded()) {
                lacking.add("hours");
            }
            if (rate == null) {
                lacking.add("rate");
            }
            return new Costing(null, null, null, null, Message.of("cost.missing." + String.join("-", lacking)));
        }
        Currency currency = rate.currency();
        if (!materials.currency().equals(currency)) {
            return new Costing(
                    null, null, null, null, Message.of("cost.currencies", "materials", materials, "rate", rate));
        }
        Exact work = new Exact(rate.amount(), rate.amount())
                .times(BigDecimal.valueOf(hours.low()), BigDecimal.valueOf(hours.high()));
        Exact cost = work.plus(materials.amount());
        if (!studio.markup().bounded()) {
            return new Costing(work.in(currency), cost.in(currency), null, null, Message.of("cost.missing.markup"));
        }
        Exact price =
                cost.times(factor(studio.markup().low()), factor(studio.markup().high()));
        Quantity kept = studio.commission();
        if (!kept.bounded() || kept.high() >= 100) {
            return new Costing(
                    work.in(currency),
                    cost.in(currency),
                    price.in(currency),
                    null,
                    Message.of("cost.missing.commission"));
        }
        Exact retail = price.before(share(kept.low()), share(kept.high()));
        return new Costing(work.in(currency), cost.in(currency), price.in(currency), retail.in(currency), null);
    }

    private static BigDecimal share(double percent) {
        return BigDecimal.valueOf(percent).divide(HUNDRED, MathContext.DECIMAL64);
    }

    private static BigDecimal factor(double percent) {
        return BigDecimal.ONE.add(share(percent));
    }
}
