package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.BOARD_LENGTH;
import static tenterbook.archive.record.Measures.DATE;
import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.COUNT;
import static tenterbook.measure.Unit.MILLIMETRE;

import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.board.BoardState;
import tenterbook.board.Hole;

/** A board pair with its states and holes. */
public final class BoardPairRecord {
    private static final Part<Hole> HOLE = Part.<Hole>of("hole")
            .text("name", Hole::name)
            .key()
            .field("acrossMm", HolePlace.TYPED, Hole::acrossMm)
            .field("downMm", HolePlace.TYPED, Hole::downMm)
            .text("note", Hole::note)
            .built(v -> new Hole(v.get("name"), v.get("acrossMm"), v.get("downMm"), v.get("note")));

    private static final Part<BoardState> STATE = Part.<BoardState>of("board-state")
            .text("name", BoardState::name)
            .key()
            .blamed()
            .field("since", DATE, BoardState::since)
            .text("change", BoardState::change)
            .field("warp", quantity(MILLIMETRE), BoardState::warp)
            .field("holeCount", quantity(COUNT), BoardState::holeCount)
            .list("holes", HOLE, BoardState::holes)
            .built(v -> new BoardState(
                    v.get("name"), v.get("since"), v.get("change"), v.get("warp"), v.get("holeCount"), v.get("holes")));

    public static final Part<BoardPair> BOARD_PAIR = Part.<BoardPair>of("board-pair")
            .field("id", Plain.identifier(BoardId::new), BoardPair::id)
            .required()
            .key()
            .text("image", BoardPair::image)
            .text("wood", BoardPair::wood)
            .field("length", BOARD_LENGTH, BoardPair::length)
            .field("width", BOARD_LENGTH, BoardPair::width)
            .field("thickness", BOARD_LENGTH, BoardPair::thickness)
            .field("usualLayers", quantity(COUNT), BoardPair::usualLayers)
            .text("kept", BoardPair::kept)
            .list("states", STATE, BoardPair::states)
            .blamed()
            .text("notes", BoardPair::notes)
            .built(v -> new BoardPair(
                    v.get("id"),
                    v.get("image"),
                    v.get("wood"),
                    v.get("length"),
                    v.get("width"),
                    v.get("thickness"),
                    v.get("usualLayers"),
                    v.get("kept"),
                    v.get("states"),
                    v.get("notes")));

    private BoardPairRecord() {}
}
