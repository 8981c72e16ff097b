package tenterbook.archive.record;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Entered;
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
final class TypedLength {
    private TypedLength() {}

    static Entered<Quantity> of(LengthUnits.Of what) {
        return new Entered<>(
                Measures.quantity(LengthUnits.CM_AND_MM.of(what)).stored(),
                (text, reading) -> Measures.quantity(reading.lengths().of(what)).parse(text, reading),
                (length, lengths) -> text(length, lengths.of(what)));
    }

    /** As it was entered, with its unit where that would now be read in another. */
    private static String text(Quantity length, Unit usual) {
        String entered = Measures.entered(length);
        boolean another = length.known() && length.unit() != usual && unit(entered, usual) == usual;
        if (!another || unit(entered, length.unit()) != length.unit()) {
            return entered;
        }
        String withUnit = entered + " " + length.unit().symbol();
        return same(withUnit, length, usual) ? withUnit : QuantityWords.value(length);
    }

    private static @Nullable Unit unit(String text, Unit usual) {
        try {
            return QuantityText.read(text, usual).unit();
        } catch (UnreadableQuantity e) {
            return null;
        }
    }

    private static boolean same(String text, Quantity length, Unit usual) {
        return unit(text, usual) == length.unit()
                && Objects.equals(QuantityText.read(text, usual).low(), length.low())
                && Objects.equals(QuantityText.read(text, usual).high(), length.high());
    }
}
