package tenterbook.piece.condition;

import tenterbook.measure.Identifier;

/** The name of an examination, as in {@code E24-001}; once given it is never given again. */
public record ExaminationId(String value) implements Identifier {
    public ExaminationId {
        value = Identifier.checked("examination", value);
    }

    @Override
    public String toString() {
        return value;
    }
}
