package tenterbook.piece.fair;

import tenterbook.measure.Identifier;
import tenterbook.words.Message;

/** The name of a fair's record, as in {@code F24-001}; once given it is never given again. */
public record FairId(String value) implements Identifier {
    public FairId {
        value = Identifier.checked(Message.of("fair.kind"), value);
    }

    @Override
    public String toString() {
        return value;
    }
}
