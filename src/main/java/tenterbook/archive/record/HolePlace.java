package tenterbook.archive.record;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Numeric;
import tenterbook.archive.field.Reading;
import tenterbook.archive.field.Written;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.words.Refusal;

/** How far a hole lies from a corner of its board: stored in millimetres, typed in the studio's unit for boards or with another. */
public final class HolePlace implements Written<Double> {
    public static final HolePlace TYPED = new HolePlace();

    private static final Numeric<Double> STORED = Numeric.MILLIMETRES;

    /** A board of a kilometre is a slip. */
    private static final double MOST = 1e6;

    /** A thousandth of a millimetre hides the binary fractions of a conversion. */
    private static final double PER_MM = 1e3;

    private HolePlace() {}

    @Override
    public JsonNode write(Double value) {
        return STORED.write(value);
    }

    @Override
    public Double read(JsonNode json, Faults faults, String at) {
        return STORED.read(json, faults, at);
    }

    /** A number that a program sends is in millimetres, as the field's name says. */
    @Override
    public JsonNode understood(JsonNode given, Reading reading, Faults faults, String at) {
        return STORED.understood(given, reading, faults, at);
    }

    @Override
    public Double parse(String text, Reading reading) {
        return millimetres(text, reading.lengths());
    }

    /**
     * @return null where the text says that it is not known
     * @throws IllegalArgumentException where it is not one length
     */
    public static @Nullable Double millimetres(String text, LengthUnits lengths) {
        Unit usual = lengths.of(LengthUnits.Of.BOARDS);
        boolean below = text.matches("[-−].*");
        Quantity length = QuantityText.read(below ? text.substring(1) : text, usual);
        if (!length.known()) {
            return null;
        }
        if (length.isRange() || !length.bounded()) {
            throw Refusal.of("input.one-number", "found", text);
        }
        double distance = length.in(Unit.MILLIMETRE).low();
        if (distance > MOST) {
            throw Refusal.of("input.too-large");
        }
        double rounded = Math.round(distance * PER_MM) / PER_MM;
        return below ? -rounded : rounded;
    }

    @Override
    public String text(Double value) {
        return STORED.text(value);
    }

    @Override
    public String text(Double value, LengthUnits lengths) {
        return lengths.of(LengthUnits.Of.BOARDS) == Unit.MILLIMETRE ? text(value) : text(value) + " mm";
    }

    @Override
    public ObjectNode schema() {
        return STORED.schema();
    }
}
