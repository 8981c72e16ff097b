package tenterbook.archive.record;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Objects;
import tenterbook.archive.field.Entered;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Reading;
import tenterbook.archive.field.Written;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.measure.UnreadableQuantity;

/**
 * A length that is typed without a unit in that of the studio. It is stored with the unit in which it was understood, so a text once stored is never read in
 * another.
 */
public final class TypedLength implements Written<Quantity> {
    private final LengthUnits.Of of;
    private final Entered<Quantity> stored;

    TypedLength(LengthUnits.Of of) {
        this.of = of;
        this.stored = Measures.quantity(LengthUnits.CM_AND_MM.of(of));
    }

    @Override
    public JsonNode write(Quantity value) {
        return stored.write(value);
    }

    @Override
    public Quantity read(JsonNode json, Faults faults, String at) {
        return stored.read(json, faults, at);
    }

    @Override
    public JsonNode understood(JsonNode given, Reading reading, Faults faults, String at) {
        return given.isTextual()
                ? fromText(given.textValue(), reading, faults, at)
                : stored.understood(given, reading, faults, at);
    }

    @Override
    public Quantity parse(String text, Reading reading) {
        return Measures.quantity(reading.lengths().of(of)).parse(text, reading);
    }

    @Override
    public String text(Quantity value) {
        return stored.text(value);
    }

    /** As it was entered where that is read as the same length, else with its unit. */
    @Override
    public String text(Quantity value, LengthUnits lengths) {
        String entered = text(value);
        if (!value.known() || same(entered, value, lengths)) {
            return entered;
        }
        String withUnit = entered + " " + value.unit().symbol();
        return same(withUnit, value, lengths) ? withUnit : QuantityWords.value(value);
    }

    private boolean same(String text, Quantity value, LengthUnits lengths) {
        try {
            Unit usual = lengths.of(of);
            Quantity read = QuantityText.read(text, usual);
            return read.unit() == value.unit()
                    && Objects.equals(read.low(), value.low())
                    && Objects.equals(read.high(), value.high());
        } catch (UnreadableQuantity e) {
            return false;
        }
    }

    @Override
    public ObjectNode schema() {
        return stored.schema();
    }
}
