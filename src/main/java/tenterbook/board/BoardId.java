package tenterbook.board;

import tenterbook.measure.Identifier;

/** The name of a board pair, as in {@code B02}. */
public record BoardId(String value) implements Identifier {
    public BoardId {
        value = Identifier.checked("board pair", value);
    }

    @Override
    public String toString() {
        return value;
    }
}
