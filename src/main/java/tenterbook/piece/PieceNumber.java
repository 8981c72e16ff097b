package tenterbook.piece;

import tenterbook.measure.Identifier;
import tenterbook.words.Message;

/** The number of a piece, as in {@code V24-001}; once given it is never given again. */
public record PieceNumber(String value) implements Identifier {
    public PieceNumber {
        value = Identifier.checked(Message.of("piece.kind.piece"), value);
    }

    @Override
    public String toString() {
        return value;
    }
}
