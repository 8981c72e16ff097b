package tenterbook.recipe;

import tenterbook.board.BoardId;

/**
 * A board pair in the state it was used in.
 *
 * @param state the state's name; empty where not recorded
 */
public record BoardUse(BoardId board, String state) {
    public BoardUse {
        state = state == null ? "" : state.strip();
    }
}
