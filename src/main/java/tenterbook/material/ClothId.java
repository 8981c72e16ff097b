package tenterbook.material;

import tenterbook.measure.Identifier;

/** The name of a bolt of cloth, as in {@code SH}. */
public record ClothId(String value) implements Identifier {
    public ClothId {
        value = Identifier.checked("bolt of cloth", value);
    }

    @Override
    public String toString() {
        return value;
    }
}
