package tenterbook.web.form;

import static tenterbook.measure.Unit.COUNT;
import static tenterbook.measure.Unit.MILLIMETRE;

import java.util.List;
import tenterbook.archive.Kinds;
import tenterbook.board.BoardId;
import tenterbook.board.BoardPair;
import tenterbook.board.BoardState;
import tenterbook.board.Hole;
import tenterbook.ledger.Kind;

/** A board pair with its states and holes. */
public final class BoardForm implements RecordForm<BoardPair> {
    @Override
    public Kind<BoardPair> kind() {
        return Kinds.BOARD_PAIR;
    }

    @Override
    public Form filled(BoardPair board) {
        Form form = Form.empty();
        form.put("id", board.id()).put("image", board.image()).put("wood", board.wood());
        form.put("length", board.length());
        form.put("width", board.width());
        form.put("thickness", board.thickness());
        form.put("usualLayers", board.usualLayers());
        form.put("kept", board.kept()).put("notes", board.notes());
        for (int i = 0; i < board.states().size(); i++) {
            BoardState state = board.states().get(i);
            Form row = form.row("states", i);
            row.put("name", state.name()).put("change", state.change());
            row.put("since", state.since());
            row.put("warp", state.warp());
            row.put("holeCount", state.holeCount());
            for (int h = 0; h < state.holes().size(); h++) {
                Hole hole = state.holes().get(h);
                row.row("holes", h)
                        .put("name", hole.name())
                        .put("across", hole.acrossMm() == null ? null : plain(hole.acrossMm()))
                        .put("down", hole.downMm() == null ? null : plain(hole.downMm()))
                        .put("note", hole.note());
            }
        }
        return form;
    }

    static String plain(double value) {
        return java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    @Override
    public BoardPair read(Form form, BoardPair old) {
        BoardId id = old != null ? old.id() : form.read("id", null, BoardId::new);
        if (id == null) {
            form.problem("id", "A board pair needs a name, as in ‘B07’: it stands on every piece made from it.");
        }
        List<BoardState> states = form.each("states", BoardForm::state);
        if (states.isEmpty()) {
            states = List.of(new BoardState("I", null, null, null, null, null));
        }
        List<BoardState> all = states;
        BoardPair board = form.build(
                "states",
                () -> new BoardPair(
                        id,
                        form.text("image"),
                        form.text("wood"),
                        form.quantity("length", MILLIMETRE),
                        form.quantity("width", MILLIMETRE),
                        form.quantity("thickness", MILLIMETRE),
                        form.quantity("usualLayers", COUNT),
                        form.text("kept"),
                        all,
                        form.text("notes")));
        return form.hasProblems() ? null : board;
    }

    private static BoardState state(Form row) {
        List<Hole> holes = row.each(
                "holes",
                hole -> new Hole(hole.text("name"), hole.decimal("across"), hole.decimal("down"), hole.text("note")));
        return row.build(
                "name",
                () -> new BoardState(
                        row.text("name"),
                        row.date("since"),
                        row.text("change"),
                        row.quantity("warp", MILLIMETRE),
                        row.quantity("holeCount", COUNT),
                        holes));
    }
}
