package tenterbook.web.found;

import static tenterbook.web.page.Words.w;

import java.time.LocalDate;
import java.util.Currency;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tenterbook.facts.PieceFacts;
import tenterbook.measure.Money;
import tenterbook.measure.NumberWords;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.recipe.dip.DipTally;
import tenterbook.words.Written;

/** What can be drawn along an axis. */
public enum PlotQuantity {
    DIPS("dips", facts -> dips(facts.dips())),
    LAYERS("layers", facts -> Derived.oneNumberOfLayers(facts).flatMap(each -> of(each, Unit.COUNT))),
    LENGTH("length", facts -> of(facts.piece().length(), Unit.CENTIMETRE)),
    WIDTH("width", facts -> of(facts.piece().width(), Unit.CENTIMETRE)),
    MASS("mass", facts -> of(facts.piece().mass(), Unit.GRAM)),
    PRICE("price", facts -> Optional.ofNullable(facts.piece().price()).map(PlotQuantity::price)),
    FINISHED("finished", facts -> days(facts.piece().finished())),
    EXAMINED("examined", facts -> facts.condition().lastLooked().flatMap(PlotQuantity::days)),
    /** L* of the main colour, 0 to 100. */
    LIGHTNESS("lightness", facts -> colour(facts, each -> each.colour().lightness())),
    /** C*ab of the main colour. */
    CHROMA("chroma", facts -> colour(facts, each -> each.colour().chroma()));

    private final String word;
    private final Function<PieceFacts, Optional<Extent>> extent;

    PlotQuantity(String word, Function<PieceFacts, Optional<Extent>> extent) {
        this.word = word;
        this.extent = extent;
    }

    /**
     * Where a piece lies on an axis.
     *
     * @param low lower end in the axis's unit, days since 1970-01-01 for days; minus infinity where open
     * @param high upper end, likewise
     * @param text as shown
     */
    record Extent(double low, double high, Written text) {
        boolean range() {
            return low < high;
        }
    }

    /** The value in the address. */
    public String word() {
        return word;
    }

    public String label() {
        return w("found.axis." + word);
    }

    boolean ofDays() {
        return this == FINISHED || this == EXAMINED;
    }

    /** Label with the unit, as in 'length, cm'. */
    String titled(@Nullable Currency currency) {
        return switch (this) {
            case LENGTH, WIDTH -> withUnit(Unit.CENTIMETRE.symbol());
            case MASS -> withUnit(Unit.GRAM.symbol());
            case PRICE -> currency == null ? label() : withUnit(currency.getCurrencyCode());
            case LIGHTNESS -> withUnit("L*");
            case CHROMA -> withUnit("C*");
            default -> label();
        };
    }

    private String withUnit(String unit) {
        return w("found.axis-unit", "axis", label(), "unit", unit);
    }

    Optional<Extent> of(PieceFacts facts) {
        return extent.apply(facts);
    }

    private static Optional<Extent> dips(DipTally dips) {
        return dips.known() ? Optional.of(new Extent(dips.low(), dips.high(), dips.number())) : Optional.empty();
    }

    private static Optional<Extent> of(Quantity quantity, Unit unit) {
        Quantity there = quantity.in(unit);
        return there.known()
                ? Optional.of(new Extent(
                        there.low() == null ? Double.NEGATIVE_INFINITY : there.low(),
                        there.high() == null ? Double.POSITIVE_INFINITY : there.high(),
                        quantity.entered().isBlank()
                                ? QuantityWords.understood(quantity)
                                : QuantityWords.withAssumedUnit(quantity)))
                : Optional.empty();
    }

    private static Extent price(Money price) {
        double amount = price.amount().doubleValue();
        return new Extent(amount, amount, price);
    }

    private static Optional<Extent> days(PartialDate when) {
        return when.known()
                ? Optional.of(new Extent(
                        day(when.from(), Double.NEGATIVE_INFINITY), day(when.to(), Double.POSITIVE_INFINITY), when))
                : Optional.empty();
    }

    private static double day(@Nullable LocalDate day, double open) {
        return day == null ? open : day.toEpochDay();
    }

    private interface Measure {
        double of(tenterbook.facts.PieceColour colour);
    }

    private static Optional<Extent> colour(PieceFacts facts, Measure measure) {
        return facts.colours().main().map(colour -> {
            double value = measure.of(colour);
            return new Extent(value, value, NumberWords.decimals(value, 0));
        });
    }
}
