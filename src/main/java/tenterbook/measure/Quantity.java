package tenterbook.measure;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Conventions;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * A quantity as entered and as understood.
 *
 * <p>One number has {@code low == high}; '6 to 8' has both ends; 'at least 5' has no {@code high}; 'up to 8' no {@code low};
 * 'forgot' has neither. A field nobody filled in is {@link #UNRECORDED}.
 *
 * @param entered the text exactly as typed, or the text of a computed value; never null, may be empty
 * @param low lower end in {@code unit}, or null where there is none
 * @param high upper end in {@code unit}, or null where there is none
 * @param unit the unit of both ends; null only where there is no value
 * @param basis how the value is known
 * @param about whether the text has 'about'
 */
public record Quantity(
        String entered,
        @Nullable Double low,
        @Nullable Double high,
        @Nullable Unit unit,
        Basis basis,
        boolean about) implements Written {
    /** Nothing was entered: not zero, and not even 'forgot'. */
    public static final Quantity UNRECORDED = new Quantity("", null, null, null, Basis.UNKNOWN, false);

    public Quantity {
        entered = entered == null ? "" : entered;
        basis = basis == null ? Basis.UNKNOWN : basis;
        if (low != null || high != null) {
            Objects.requireNonNull(unit, "A quantity with a value needs its unit");
        }
        if (low != null && !Double.isFinite(low) || high != null && !Double.isFinite(high)) {
            throw Refusal.of("measure.quantity.not-finite", "low", String.valueOf(low), "high", String.valueOf(high));
        }
        if (low != null && high != null && low > high) {
            throw Refusal.of("measure.quantity.range", "low", NumberWords.plain(low), "high", NumberWords.plain(high));
        }
    }

    public static Quantity between(double low, double high, Unit unit, Basis basis) {
        var quantity = new Quantity("", low, high, unit, basis, false);
        return new Quantity(QuantityWords.value(quantity), low, high, unit, basis, false);
    }

    /** The same value with 'about'. */
    public Quantity approximately() {
        var quantity = new Quantity("", low, high, unit, basis, true);
        return new Quantity(QuantityWords.value(quantity), low, high, unit, basis, true);
    }

    /** Whether there is a value, if only one end of a range. */
    public boolean known() {
        return low != null || high != null;
    }

    /** Whether both ends are known, as computing needs. */
    public boolean bounded() {
        return low != null && high != null;
    }

    public boolean recorded() {
        return known() || !entered.isBlank();
    }

    public boolean isRange() {
        return known() && !Objects.equals(low, high);
    }

    /** The same quantity in another unit, with the entered text kept. A value that cannot be converted becomes unknown. */
    public Quantity in(Unit other) {
        if (!known() || unit == other) {
            return this;
        }
        @Nullable Double newLow = low == null ? null : unit.convert(low, other);
        @Nullable Double newHigh = high == null ? null : unit.convert(high, other);
        if (newLow != null && newLow.isNaN() || newHigh != null && newHigh.isNaN()) {
            return new Quantity(entered, null, null, null, Basis.UNKNOWN, about);
        }
        return new Quantity(entered, newLow, newHigh, other, basis, about);
    }

    /** The mean of both ends, for sorting, drawing and scale only, never for printing. NaN where an end is missing. */
    public double middle() {
        return bounded() ? (low + high) / 2 : Double.NaN;
    }

    /** As entered; 'not recorded' where nothing was. */
    @Override
    public String in(Conventions conventions) {
        return QuantityWords.asEntered(this).in(conventions);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
