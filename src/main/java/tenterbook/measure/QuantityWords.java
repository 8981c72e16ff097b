package tenterbook.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Quantities in words for pages and paper: as entered, in metric and in US customary units. A text is in the language of the paper
 * that is composed ({@link Written#onPaper}), English elsewhere.
 */
public final class QuantityWords {
    private QuantityWords() {}

    /** As entered; 'not recorded' where nothing was. */
    public static String entered(Quantity quantity) {
        return asEntered(quantity).onPaper();
    }

    public static Written asEntered(Quantity quantity) {
        if (!quantity.entered().isBlank()) {
            String entered = inOneForm(quantity);
            return conventions -> conventions.decimalMark() == ',' && quantity.known() && entered.indexOf(',') < 0
                    ? POINT.matcher(entered).replaceAll(",")
                    : entered;
        }
        return quantity.known() ? understood(quantity) : Message.of("measure.not-recorded");
    }

    private static final Pattern RANGE = Pattern.compile("(?<=\\d)\\s*(?:-|–|\\bto\\b)\\s*(?=\\d)");

    /** A decimal point; where commas stand in the text too, they group digits and the text is left as it is. */
    private static final Pattern POINT = Pattern.compile("(?<=\\d)\\.(?=\\d)");

    /** What was typed, with the marks of {@link NumberWords}: the words stay, an en dash stands in a range and no space in a ratio. */
    private static String inOneForm(Quantity quantity) {
        String text = quantity.entered();
        if (!quantity.known()) {
            return text;
        }
        if (quantity.isRange()) {
            text = RANGE.matcher(text).replaceAll("–");
        }
        return switch (quantity.unit()) {
            case RATIO -> text.replaceAll("(?<=\\d)\\s*(?::|\\bto\\b)\\s*1\\b", Unit.RATIO.symbol());
            case PERCENT -> text.replaceAll("(?<=\\d)\\s*%", NumberWords.UNIT_SPACE + Unit.PERCENT.symbol());
            default -> text;
        };
    }

    /** As entered; where no unit was typed, the understood value with the assumed unit, as in '6–8 min'. */
    public static Written withAssumedUnit(Quantity quantity) {
        boolean assumed = quantity.known()
                && !quantity.entered().isBlank()
                && quantity.unit() != Unit.PH
                && !quantity.unit().symbol().isEmpty()
                && withoutUnit(quantity.entered());
        return assumed ? understood(quantity) : asEntered(quantity);
    }

    private static boolean withoutUnit(String entered) {
        try {
            return QuantityText.read(entered, Unit.COUNT).unit() == Unit.COUNT;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** How long something lasted, as in 'for 6 h', 'overnight' or 'how long: forgot'. */
    public static Written lasting(Quantity quantity) {
        Written entered = withAssumedUnit(quantity);
        if (quantity.entered().toLowerCase(Locale.ROOT).contains("overnight")) {
            return entered;
        }
        return quantity.known()
                ? Message.of("measure.lasting", "value", entered)
                : Message.of("measure.lasting-unknown", "entered", entered);
    }

    /** The understood value with its unit, as in 'about 6–8 min' or 'at least 5'; 'unknown' where there is none. */
    public static String value(Quantity quantity) {
        return understood(quantity).onPaper();
    }

    public static Written understood(Quantity quantity) {
        if (!quantity.known()) {
            return Message.of("measure.unknown");
        }
        Written text;
        if (quantity.high() == null) {
            text = Message.of(
                    "measure.at-least", "value", withUnit(quantity.unit(), NumberWords.rounded(quantity.low())));
        } else if (quantity.low() == null) {
            text = Message.of(
                    "measure.up-to", "value", withUnit(quantity.unit(), NumberWords.rounded(quantity.high())));
        } else if (quantity.isRange()) {
            text = withUnit(
                    quantity.unit(),
                    NumberWords.range(NumberWords.rounded(quantity.low()), NumberWords.rounded(quantity.high())));
        } else {
            text = withUnit(quantity.unit(), NumberWords.rounded(quantity.low()));
        }
        return quantity.about() ? Message.of("measure.about", "value", text) : text;
    }

    private static Written withUnit(Unit unit, Written number) {
        return conventions -> {
            String written = number.in(conventions);
            if (unit == Unit.PH) {
                return unit.symbol() + NumberWords.UNIT_SPACE + written;
            }
            boolean closedUp = unit.symbol().isEmpty() || unit == Unit.RATIO;
            String symbol = unit == Unit.NIGHT ? Message.of("measure.night").in(conventions) : unit.symbol();
            return written + (closedUp ? "" : NumberWords.UNIT_SPACE) + symbol;
        };
    }

    /** In metric units; empty where there is no value or nothing to convert. */
    public static Optional<String> metric(Quantity quantity) {
        return inMetric(quantity).map(QuantityWords::value);
    }

    /** In US customary units; empty where there is no value or nothing to convert. */
    public static Optional<String> us(Quantity quantity) {
        return inUs(quantity).map(QuantityWords::value);
    }

    /** The quantity in a metric unit of a usual size; empty where there is no value or nothing to convert. */
    public static Optional<Quantity> inMetric(Quantity quantity) {
        return converted(quantity, false);
    }

    /** The quantity in a US customary unit of a usual size; empty where there is no value or nothing to convert. */
    public static Optional<Quantity> inUs(Quantity quantity) {
        return converted(quantity, true);
    }

    private static Optional<Quantity> converted(Quantity quantity, boolean customary) {
        if (!quantity.known()) {
            return Optional.empty();
        }
        double size = quantity.high() == null ? quantity.low() : quantity.high();
        Unit target = customary ? usUnit(quantity.unit(), size) : metricUnit(quantity.unit(), size);
        if (target == null) {
            return Optional.empty();
        }
        Quantity there = quantity.in(target);
        return there.known() ? Optional.of(there) : Optional.empty();
    }

    private static @Nullable Unit metricUnit(Unit from, double size) {
        return switch (from.dimension()) {
            case LENGTH -> {
                double mm = from.convert(size, Unit.MILLIMETRE);
                if (mm < 30) {
                    yield Unit.MILLIMETRE;
                }
                yield mm < 5000 ? Unit.CENTIMETRE : Unit.METRE;
            }
            case MASS -> from.convert(size, Unit.GRAM) < 1000 ? Unit.GRAM : Unit.KILOGRAM;
            case AREA -> Unit.SQUARE_METRE;
            case AREAL_WEIGHT -> Unit.GRAM_PER_SQUARE_METRE;
            case VOLUME -> from.convert(size, Unit.LITRE) < 1 ? Unit.MILLILITRE : Unit.LITRE;
            case CONCENTRATION -> Unit.GRAM_PER_LITRE;
            case TEMPERATURE -> Unit.CELSIUS;
            default -> null;
        };
    }

    private static @Nullable Unit usUnit(Unit from, double size) {
        return switch (from.dimension()) {
            case LENGTH -> from.convert(size, Unit.INCH) < 120 ? Unit.INCH : Unit.YARD;
            case MASS -> from.convert(size, Unit.OUNCE) < 32 ? Unit.OUNCE : Unit.POUND;
            case AREA -> Unit.SQUARE_YARD;
            case AREAL_WEIGHT -> Unit.OUNCE_PER_SQUARE_YARD;
            case VOLUME -> from.convert(size, Unit.US_GALLON) < 0.5 ? Unit.FLUID_OUNCE : Unit.US_GALLON;
            case CONCENTRATION -> Unit.OUNCE_PER_GALLON;
            case TEMPERATURE -> Unit.FAHRENHEIT;
            default -> null;
        };
    }

    /** Three significant digits at least, whole numbers whole, no exponent and no trailing zeros. */
    public static String number(double value) {
        return NumberWords.rounded(value).onPaper();
    }

    static BigDecimal rounded(double value) {
        BigDecimal decimal = BigDecimal.valueOf(value);
        return Math.abs(value) >= 100
                ? decimal.setScale(0, RoundingMode.HALF_UP)
                : decimal.round(new MathContext(3, RoundingMode.HALF_UP));
    }
}
