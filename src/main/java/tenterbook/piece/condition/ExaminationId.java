package tenterbook.piece.condition;

import tenterbook.measure.Identifier;
import tenterbook.words.Message;

/** The name of an examination, as in {@code E24-001}; once given it is never given again. */
public record ExaminationId(String value) implements Identifier {
    public ExaminationId {
        value = Identifier.checked(Message.of("condition.kind"), value);
    }

    @Override
    public String toString() {
        return value;
    }
}
