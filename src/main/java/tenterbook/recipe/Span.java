package tenterbook.recipe;

import java.util.function.DoubleBinaryOperator;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Basis;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;

/**
 * Interval arithmetic on amounts that are never negative. A missing end ('at least 5') stays missing in every result that needs
 * it.
 *
 * @param low lower end, or null
 * @param high upper end, or null
 */
record Span(@Nullable Double low, @Nullable Double high, boolean about) {
    static Span exactly(double value) {
        return new Span(value, value, false);
    }

    static Span of(Quantity quantity, Unit unit) {
        Quantity there = quantity.in(unit);
        return new Span(there.low(), there.high(), there.about());
    }

    Span plus(Span other) {
        return with(other, Double::sum);
    }

    Span times(Span other) {
        return with(other, (a, b) -> a * b);
    }

    Span times(double factor) {
        return times(exactly(factor));
    }

    /** Division by zero gives a missing upper end. */
    Span over(Span other) {
        Double least = low == null || other.high == null || other.high == 0 ? null : (Double) (low / other.high);
        Double most = high == null || other.low == null || other.low == 0 ? null : (Double) (high / other.low);
        return new Span(least, most, about || other.about);
    }

    /** One less, at least 0: the number of intervals between this many things. */
    Span lessOne() {
        return new Span(
                low == null ? null : (Double) Math.max(0, low - 1),
                high == null ? null : (Double) Math.max(0, high - 1),
                about);
    }

    private Span with(Span other, DoubleBinaryOperator operation) {
        return new Span(
                low == null || other.low == null ? null : (Double) operation.applyAsDouble(low, other.low),
                high == null || other.high == null ? null : (Double) operation.applyAsDouble(high, other.high),
                about || other.about);
    }

    /** The gap between two spans as a share of the nearer end of {@code trusted}; 0 where they meet or overlap. */
    static double gap(Span trusted, Span other) {
        if (trusted.high != null && other.low != null && other.low > trusted.high) {
            return (other.low - trusted.high) / trusted.high;
        }
        if (trusted.low != null && other.high != null && other.high < trusted.low) {
            return (trusted.low - other.high) / trusted.low;
        }
        return 0;
    }

    boolean known() {
        return low != null && Double.isFinite(low) || high != null && Double.isFinite(high);
    }

    Quantity in(Unit unit) {
        Double least = low == null || !Double.isFinite(low) ? null : low;
        Double most = high == null || !Double.isFinite(high) ? null : high;
        Quantity bare = new Quantity("", least, most, unit, Basis.COMPUTED, about);
        return new Quantity(QuantityWords.value(bare), least, most, unit, Basis.COMPUTED, about);
    }
}
