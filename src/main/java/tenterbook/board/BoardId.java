package tenterbook.board;

import tenterbook.measure.Identifier;
import tenterbook.words.Message;

/** The name of a board pair, as in {@code B02}. */
public record BoardId(String value) implements Identifier {
    public BoardId {
        value = Identifier.checked(Message.of("board.kind"), value);
    }

    @Override
    public String toString() {
        return value;
    }
}
