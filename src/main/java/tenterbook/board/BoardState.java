package tenterbook.board;

import java.util.List;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.words.Refusal;

/**
 * A board pair between two carvings. Recarving opens a new state; pieces keep the state they were made from.
 *
 * @param name as in {@code I}, {@code II}; unique in its pair
 * @param since when this state began
 * @param change what was carved, mended or sealed to make it
 * @param warp greatest gap of a board from flat, as a length
 * @param holeCount how many holes, where they are not listed one by one
 * @param holes the hole plan, empty where not recorded
 */
public record BoardState(
        String name, PartialDate since, String change, Quantity warp, Quantity holeCount, List<Hole> holes) {
    public BoardState {
        name = name == null || name.isBlank() ? "I" : name.strip();
        since = since == null ? PartialDate.UNRECORDED : since;
        change = change == null ? "" : change.strip();
        warp = warp == null ? Quantity.UNRECORDED : warp;
        holeCount = holeCount == null ? Quantity.UNRECORDED : holeCount;
        holes = holes == null ? List.of() : List.copyOf(holes);
        if (holes.stream().map(Hole::name).distinct().count() < holes.size()) {
            throw Refusal.of("board.two-holes-alike", "state", name);
        }
    }
}
