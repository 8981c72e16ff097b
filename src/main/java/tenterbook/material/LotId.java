package tenterbook.material;

import tenterbook.measure.Identifier;

/** The name of a lot of dye or mordant, as in {@code woad-2024}. */
public record LotId(String value) implements Identifier {
    public LotId {
        value = Identifier.checked("lot of dye or mordant", value);
    }

    @Override
    public String toString() {
        return value;
    }
}
