package tenterbook.web.found;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.web.page.Words;

/**
 * One value of a piece.
 *
 * @param text as shown; empty where nothing is recorded
 * @param from its lower end as a plain number or day; empty where it is open or the value is no amount
 * @param to its upper end, likewise
 * @param several the values where there can be several, as of dyes; else empty
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Cell(String text, String from, String to, List<String> several) {
    public static final Cell NOT_RECORDED = new Cell("", "", "", List.of());

    static Cell of(@Nullable String text) {
        return text == null || text.isBlank() ? NOT_RECORDED : new Cell(text, "", "", List.of());
    }

    static Cell several(List<String> values) {
        List<String> once =
                values.stream().filter(value -> !value.isBlank()).distinct().toList();
        return new Cell(String.join(", ", once), "", "", once);
    }

    /** As entered, with the unit assumed where none was typed, and both ends in {@code unit}. */
    static Cell of(Quantity quantity, Unit unit) {
        Quantity there = quantity.in(unit);
        return quantity.recorded()
                ? new Cell(
                        Words.w(QuantityWords.withAssumedUnit(quantity)),
                        plain(there.low()),
                        plain(there.high()),
                        List.of())
                : NOT_RECORDED;
    }

    static Cell of(PartialDate when) {
        return when.recorded()
                ? new Cell(
                        Words.w(when),
                        when.from() == null ? "" : when.from().toString(),
                        when.to() == null ? "" : when.to().toString(),
                        List.of())
                : NOT_RECORDED;
    }

    static Cell of(String text, double low, double high) {
        return new Cell(text, plain(low), plain(high), List.of());
    }

    private static String plain(@Nullable Double end) {
        return end == null || !Double.isFinite(end)
                ? ""
                : BigDecimal.valueOf(end)
                        .setScale(4, RoundingMode.HALF_UP)
                        .stripTrailingZeros()
                        .toPlainString();
    }

    /** Whether any end is known. */
    boolean amount() {
        return !from.isEmpty() || !to.isEmpty();
    }

    /** Whether there is something to compare: where amounts are, 'forgot' says nothing. */
    boolean says(boolean amounts) {
        return recorded() && (!amounts || amount() || !several.isEmpty());
    }

    /** Whether both ends are known and the same. */
    boolean exact() {
        return !from.isEmpty() && from.equals(to);
    }

    /** Whether its upper end lies before the other's lower end; both are numbers or both days. */
    boolean endsBefore(Cell other) {
        if (to.isEmpty() || other.from.isEmpty()) {
            return false;
        }
        return from.indexOf('-') > 0 || to.indexOf('-') > 0
                ? to.compareTo(other.from) < 0
                : new BigDecimal(to).compareTo(new BigDecimal(other.from)) < 0;
    }

    /** The values themselves. */
    List<String> parts() {
        return several.isEmpty() ? List.of(text) : several;
    }

    public boolean recorded() {
        return !text.isEmpty();
    }
}
