package tenterbook.material;

import tenterbook.measure.Identifier;
import tenterbook.words.Message;

/** The name of a bolt of cloth, as in {@code SH}. */
public record ClothId(String value) implements Identifier {
    public ClothId {
        value = Identifier.checked(Message.of("material.kind.cloth"), value);
    }

    @Override
    public String toString() {
        return value;
    }
}
