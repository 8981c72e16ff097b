package tenterbook.measure;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tenterbook.words.Refusal;

/**
 * A unit a dyer writes, with its exact factor to the base unit of its dimension.
 *
 * <p>Inch, pound and US gallon factors are the exact definitions of the international yard and pound (1959) and NIST
 * Handbook 44, appendix C. One momme is 4.340 g/m² (common practice).
 */
public enum Unit {
    COUNT(Dimension.COUNT, "", 1, "x", "times", "dips", "dip", "layers", "layer", "pieces", "piece", "pcs"),
    PERCENT(Dimension.PERCENT, "%", 1, "percent", "pct", "% wof", "wof"),
    RATIO(Dimension.RATIO, ":1", 1, ": 1", "to 1"),
    PH(Dimension.ACIDITY, "pH", 1, "ph"),

    MILLIMETRE(Dimension.LENGTH, "mm", 1, "millimetre", "millimetres", "millimeter", "millimeters"),
    CENTIMETRE(Dimension.LENGTH, "cm", 10, "centimetre", "centimetres", "centimeter", "centimeters"),
    METRE(Dimension.LENGTH, "m", 1000, "metre", "metres", "meter", "meters"),
    INCH(Dimension.LENGTH, "in", 25.4, "inch", "inches", "\"", "″", "”"),
    FOOT(Dimension.LENGTH, "ft", 304.8, "foot", "feet", "'", "′", "’"),
    YARD(Dimension.LENGTH, "yd", 914.4, "yds", "yard", "yards"),

    SQUARE_METRE(Dimension.AREA, "m²", 1, "m2", "sqm", "sq m"),
    SQUARE_YARD(Dimension.AREA, "yd²", 0.83612736, "yd2", "sq yd"),

    MILLIGRAM(Dimension.MASS, "mg", 0.001, "milligram", "milligrams"),
    GRAM(Dimension.MASS, "g", 1, "gr", "gram", "grams", "gramme", "grammes"),
    KILOGRAM(Dimension.MASS, "kg", 1000, "kilo", "kilos", "kilogram", "kilograms"),
    OUNCE(Dimension.MASS, "oz", 28.349523125, "ounce", "ounces"),
    POUND(Dimension.MASS, "lb", 453.59237, "lbs", "pound", "pounds"),

    GRAM_PER_SQUARE_METRE(Dimension.AREAL_WEIGHT, "g/m²", 1, "g/m2", "gsm"),
    MOMME(Dimension.AREAL_WEIGHT, "momme", 4.340, "mm (momme)", "mm", "m/m", "mommes", "匁"),
    OUNCE_PER_SQUARE_YARD(Dimension.AREAL_WEIGHT, "oz/yd²", 28.349523125 / 0.83612736, "oz/yd2", "oz/sq yd", "osy"),

    MILLILITRE(Dimension.VOLUME, "ml", 0.001, "millilitre", "millilitres", "milliliter", "milliliters"),
    LITRE(Dimension.VOLUME, "L", 1, "l", "ltr", "litre", "litres", "liter", "liters"),
    FLUID_OUNCE(Dimension.VOLUME, "fl oz", 0.0295735295625, "floz", "fluid ounce", "fluid ounces"),
    US_GALLON(Dimension.VOLUME, "gal", 3.785411784, "gallon", "gallons", "us gal"),

    GRAM_PER_LITRE(Dimension.CONCENTRATION, "g/L", 1, "g/l"),
    OUNCE_PER_GALLON(Dimension.CONCENTRATION, "oz/gal", 28.349523125 / 3.785411784),

    SECOND(Dimension.DURATION, "s", 1 / 60.0, "sec", "secs", "second", "seconds"),
    MINUTE(Dimension.DURATION, "min", 1, "mins", "minute", "minutes", "'"),
    HOUR(Dimension.DURATION, "h", 60, "hr", "hrs", "hour", "hours"),
    DAY(Dimension.DURATION, "d", 1440, "day", "days"),
    NIGHT(Dimension.DURATION, "night", Double.NaN, "overnight", "nights"),

    CELSIUS(Dimension.TEMPERATURE, "°C", 1, "c", "°c", "celsius", "degrees c", "deg c", "º c", "ºc"),
    FAHRENHEIT(Dimension.TEMPERATURE, "°F", 5 / 9.0, "f", "°f", "fahrenheit", "degrees f", "deg f", "ºf");

    private final Dimension dimension;
    private final String symbol;
    private final double toBase;
    private final List<String> alsoWritten;

    Unit(Dimension dimension, String symbol, double toBase, String... alsoWritten) {
        this.dimension = dimension;
        this.symbol = symbol;
        this.toBase = toBase;
        this.alsoWritten = List.of(alsoWritten);
    }

    public Dimension dimension() {
        return dimension;
    }

    public String symbol() {
        return symbol;
    }

    /**
     * A value of this unit in another unit of the same dimension. A night has no fixed length: converting one gives NaN.
     *
     * @throws Refusal if the two units measure different things
     */
    public double convert(double value, Unit other) {
        if (other.dimension != dimension) {
            throw Refusal.of("measure.unit.other-dimension", "from", this, "to", other);
        }
        if (other == this) {
            return value;
        }
        if (dimension == Dimension.TEMPERATURE) {
            return this == FAHRENHEIT ? (value - 32) * 5 / 9 : value * 9 / 5 + 32;
        }
        return value * toBase / other.toBase;
    }

    /** The unit of {@code dimension} with this spelling; case does not matter. */
    public static Optional<Unit> written(String text, Dimension dimension) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        for (Unit unit : values()) {
            if (unit.dimension == dimension
                    && (unit.symbol.toLowerCase(Locale.ROOT).equals(plain) || unit.alsoWritten.contains(plain))) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }

    /** The name used in records: lower case with hyphens, as in {@code gram-per-litre}. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
