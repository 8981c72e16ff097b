package tenterbook.archive.record;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import tenterbook.archive.field.Entered;
import tenterbook.archive.field.Flag;
import tenterbook.archive.field.Numeric;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.archive.field.Values;
import tenterbook.colour.space.Lab;
import tenterbook.measure.DateText;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.piece.Layers;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Values that many records hold: quantities, dates, prices, layers, colours. */
public final class Measures {
    /** Greatest plausible value in any unit. */
    private static final double MOST = 1e9;

    public static final Entered<PartialDate> DATE = new Entered<>(
            Part.<PartialDate>of("date")
                    .text("entered", PartialDate::entered)
                    .field("from", Plain.DAY, PartialDate::from)
                    .field("to", Plain.DAY, PartialDate::to)
                    .field("about", Flag.YES_ONLY, PartialDate::about)
                    .doubted(date -> differs(date.entered(), date.equals(DateText.read(date.entered()))))
                    .built(v -> new PartialDate(v.get("entered"), v.get("from"), v.get("to"), v.get("about", false))),
            (text, reading) -> DateText.read(text),
            (date, lengths) -> date.entered());

    /** The amount is stored as text, since binary fractions are not exact. */
    public static final Entered<Money> MONEY = new Entered<>(
            Part.<Money>of("money")
                    .field("amount", new Plain<>("", BigDecimal::toPlainString, Money::amount), Money::amount)
                    .required()
                    .blamed()
                    .field("currency", Plain.CURRENCY, Money::currency)
                    .required()
                    .built(v -> new Money(v.get("amount"), v.get("currency"))),
            (text, reading) -> Money.read(text, reading.currency()),
            (money, lengths) -> money.toString());

    public static final Entered<Layers> LAYERS = new Entered<>(
            Part.<Layers>of("layers")
                    .text("entered", Layers::entered)
                    .list("layers", Numeric.WHOLE, Layers::layers)
                    .field("all", Flag.YES_ONLY, Layers::all)
                    .doubted(layers -> differs(layers.entered(), layers.equals(Layers.read(layers.entered()))))
                    .built(v -> new Layers(v.get("entered"), v.get("layers"), v.get("all", false))),
            (text, reading) -> Layers.read(text),
            (layers, lengths) -> layers.entered());

    /** CIELAB, D65, 2° observer. */
    public static final Entered<Lab> LAB = new Entered<>(
            Part.<Lab>of("lab")
                    .field("lightness", Numeric.DECIMAL, Lab::lightness)
                    .required()
                    .field("a", Numeric.DECIMAL, Lab::a)
                    .required()
                    .field("b", Numeric.DECIMAL, Lab::b)
                    .required()
                    .doubted(Measures::outOfRange)
                    .built(v -> new Lab(v.get("lightness", 0.0), v.get("a", 0.0), v.get("b", 0.0))),
            (text, reading) -> Lab.parse(text),
            (colour, lengths) -> colour.text());

    /** Of cloth, cuts and finished pieces. */
    public static final Entered<Quantity> CLOTH_LENGTH = TypedLength.of(LengthUnits.Of.CLOTH);

    public static final Entered<Quantity> BOARD_LENGTH = TypedLength.of(LengthUnits.Of.BOARDS);

    private Measures() {}

    /**
     * A quantity.
     *
     * @param usual the unit of a text that names none; all units of its dimension are accepted
     */
    public static Entered<Quantity> quantity(Unit usual) {
        return new Entered<>(
                Part.<Quantity>of("quantity-" + usual.dimension().name().toLowerCase(Locale.ROOT))
                        .text("entered", Quantity::entered)
                        .field("low", Numeric.DECIMAL, Quantity::low)
                        .field("high", Numeric.DECIMAL, Quantity::high)
                        .choice("unit", StoredCodes.UNIT, Quantity::unit)
                        .choice("basis", StoredCodes.BASIS, Quantity::basis)
                        .field("about", Flag.YES_ONLY, Quantity::about)
                        .doubted(quantity -> doubt(quantity, usual))
                        .built(v -> quantity(v.get("entered"), v.get("low"), v.get("high"), v.get("unit"), v)),
                (text, reading) -> {
                    Quantity read = QuantityText.read(text, usual);
                    if (tooLarge(read, usual)) {
                        throw Refusal.of("input.too-large");
                    }
                    return read;
                },
                (quantity, lengths) -> entered(quantity));
    }

    /** The line of text of a quantity. */
    static String entered(Quantity quantity) {
        return quantity.entered().isBlank() && quantity.known() ? QuantityWords.value(quantity) : quantity.entered();
    }

    private static Quantity quantity(String entered, Double low, Double high, Unit unit, Values v) {
        if (unit == null && (low != null || high != null)) {
            throw Refusal.of("input.unit-missing");
        }
        return new Quantity(entered, low, high, unit, v.get("basis"), v.get("about", false));
    }

    private static Optional<Message> doubt(Quantity found, Unit usual) {
        if (found.known() && found.unit().dimension() != usual.dimension()) {
            return Optional.of(Message.of(
                    "input.other-dimension",
                    "dimension",
                    usual.dimension().name().toLowerCase(Locale.ROOT),
                    "unit",
                    StoredCodes.UNIT.code(found.unit())));
        }
        if (tooLarge(found, usual)) {
            return Optional.of(Message.of("input.too-large"));
        }
        if (found.entered().isBlank()) {
            return Optional.empty();
        }
        Quantity read = QuantityText.read(found.entered(), found.known() ? found.unit() : usual);
        return differs(
                found.entered(),
                Objects.equals(found.low(), read.low())
                        && Objects.equals(found.high(), read.high())
                        && found.unit() == read.unit());
    }

    private static boolean tooLarge(Quantity found, Unit usual) {
        double least = usual == Unit.CELSIUS ? -MOST : 0;
        return outside(found.low(), least) || outside(found.high(), least);
    }

    private static boolean outside(Double value, double least) {
        return value != null && !(value >= least && value <= MOST);
    }

    /** Refuses a text that disagrees with the numbers beside it. */
    private static Optional<Message> differs(String entered, boolean same) {
        return same ? Optional.empty() : Optional.of(Message.of("input.entered-otherwise", "entered", entered));
    }

    /** A measured white may exceed 100 by rounding. */
    private static Optional<Message> outOfRange(Lab colour) {
        return colour.lightness() >= -0.01
                        && colour.lightness() <= 100.01
                        && Math.abs(colour.a()) <= 150
                        && Math.abs(colour.b()) <= 150
                ? Optional.empty()
                : Optional.of(Message.of("input.colour-range"));
    }
}
