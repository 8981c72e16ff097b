package tenterbook.web.clamping;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.record.HolePlace;
import tenterbook.board.BoardPair;
import tenterbook.board.BoardState;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.measure.UnreadableQuantity;
import tenterbook.web.form.Form;
import tenterbook.web.page.TypedLengths;

/**
 * The outline of a board with the holes of one state, as recorded or as typed so far, in millimetres.
 *
 * @param across length of the board
 * @param down width of the board
 */
public record HolePlan(double across, double down, List<Hole> holes) {
    private static final List<String> STATES = List.of("I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X");

    /** A hole whose place is known. */
    public record Hole(String name, double across, double down) {}

    /**
     * Where the name of a hole is written.
     *
     * @param across middle of the name
     * @param down middle of the name
     * @param line from the hole to the name, as the data of a path; empty where the name stands beside its hole
     */
    public record Label(Hole hole, double across, double down, String line) {}

    /** As recorded; the board has a length and a width. */
    public static HolePlan of(BoardPair board, BoardState state) {
        List<Hole> holes = state.holes().stream()
                .filter(hole -> hole.acrossMm() != null && hole.downMm() != null)
                .map(hole -> new Hole(hole.name(), hole.acrossMm(), hole.downMm()))
                .toList();
        return new HolePlan(
                board.length().in(Unit.MILLIMETRE).high(),
                board.width().in(Unit.MILLIMETRE).high(),
                holes);
    }

    /** As typed; null where the size of the board is not known. */
    public static @Nullable HolePlan of(Form board, Form state) {
        double across = size(board, "length");
        double down = size(board, "width");
        if (!(across > 0 && down > 0)) {
            return null;
        }
        List<Hole> holes = state.rows("holes").stream()
                .map(HolePlan::hole)
                .filter(Objects::nonNull)
                .toList();
        return new HolePlan(across, down, holes);
    }

    /** A hundredth of the longer side: what the drawing is measured in, so that its words are read on boards of any size. */
    public double unit() {
        return Math.max(across, down) / 100;
    }

    /** Radius of a hole as it is drawn, whatever its bore. */
    public double radius() {
        return unit();
    }

    /** Height of the letters: 12 pixels where the drawing is as wide as a phone. */
    public double letters() {
        return unit() * 3.8;
    }

    public List<Label> labels() {
        return new HoleLabels(this).placed();
    }

    /** The name of the next state, for the row of it; empty after the tenth. */
    public static String next(Form board) {
        int states = board.rows("states").size();
        return states < STATES.size() ? "name=" + STATES.get(states) + "&since=&change=" : "name=&since=&change=";
    }

    /** The line of a card, of those of its parts that are not empty. */
    public static String line(String... parts) {
        return Stream.of(parts).filter(part -> !part.isEmpty()).collect(Collectors.joining(" · "));
    }

    private static @Nullable Hole hole(Form row) {
        try {
            Double across = HolePlace.millimetres(row.text("acrossMm"), TypedLengths.now());
            Double down = HolePlace.millimetres(row.text("downMm"), TypedLengths.now());
            return across == null || down == null ? null : new Hole(row.text("name"), across, down);
        } catch (IllegalArgumentException e) {
            return null; // not typed yet, or refused beside its field
        }
    }

    /** What a touch on the outline writes behind its millimetres, so that they are read as such. */
    public String behindMillimetres() {
        return unitTyped() == Unit.MILLIMETRE ? "" : " mm";
    }

    private static Unit unitTyped() {
        return TypedLengths.now().of(LengthUnits.Of.BOARDS);
    }

    private static double size(Form board, String field) {
        try {
            Quantity quantity =
                    QuantityText.read(board.text(field), unitTyped()).in(Unit.MILLIMETRE);
            return quantity.high() == null ? 0 : quantity.high();
        } catch (UnreadableQuantity e) {
            return 0;
        }
    }
}
