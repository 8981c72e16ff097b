package tenterbook.material;

import tenterbook.measure.Identifier;
import tenterbook.words.Message;

/** The name of a lot of dye or mordant, as in {@code woad-2024}. */
public record LotId(String value) implements Identifier {
    public LotId {
        value = Identifier.checked(Message.of("material.kind.lot"), value);
    }

    @Override
    public String toString() {
        return value;
    }
}
