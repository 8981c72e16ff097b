package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tenterbook.archive.Kinds;
import tenterbook.board.BoardPair;
import tenterbook.board.BoardState;
import tenterbook.labelling.rule.FibreMentions;
import tenterbook.material.Lot;
import tenterbook.measure.LengthUnits;
import tenterbook.measure.Unit;
import tenterbook.piece.cost.TaxWay;
import tenterbook.web.Site;
import tenterbook.web.page.TypedLengths;
import tenterbook.words.Worded;

/** What the drop-down fields of forms offer. */
public final class Choices {
    /** One entry: what is sent and what is read. */
    public record Choice(String value, String label) {}

    private Choices() {}

    public static List<Choice> words(Object[] words) {
        return Arrays.stream(words)
                .map(word -> new Choice(word.toString(), word instanceof Worded worded ? w(worded) : word.toString()))
                .toList();
    }

    /** The unit of a bare number in a field: that of the studio for {@code cloth} and {@code boards}, else the one named. */
    public static String usualUnit(String name) {
        return switch (name) {
            case "cloth" -> TypedLengths.now().of(LengthUnits.Of.CLOTH).toString();
            case "boards" -> TypedLengths.now().of(LengthUnits.Of.BOARDS).toString();
            default -> name;
        };
    }

    /** How lengths without a unit are read, by codes. */
    public static List<Choice> lengthUnits() {
        return words(LengthUnits.values());
    }

    /** The symbol of the unit that a bare number has in a field; empty where it counts something or there is none. */
    public static String unitSymbol(String name) {
        return Arrays.stream(Unit.values())
                .filter(unit -> unit.toString().equals(name))
                .findFirst()
                .map(Unit::symbol)
                .orElse("");
    }

    /** How the tax of a sale is charged, by codes. */
    public static List<Choice> taxWays() {
        return Arrays.stream(TaxWay.values())
                .map(way -> new Choice(way.code(), w(way)))
                .toList();
    }

    public static List<Choice> boards(Site site) {
        List<Choice> list = new ArrayList<>();
        for (var saved : site.ledger().all(Kinds.BOARD_PAIR)) {
            BoardPair board = saved.record();
            for (BoardState state : board.states()) {
                list.add(new Choice(
                        board.id() + "/" + state.name(),
                        w("clamping-form.board-and-state", "board", board.title(), "state", state.name())));
            }
            if (board.states().size() > 1) {
                list.add(
                        new Choice(board.id().value(), w("clamping-form.board-without-state", "board", board.title())));
            }
        }
        return list;
    }

    public static List<Choice> cloths(Site site) {
        return site.ledger().all(Kinds.CLOTH).stream()
                .map(saved ->
                        new Choice(saved.record().id().value(), saved.record().title()))
                .toList();
    }

    /** Names of the fibres that labels know; any other can be typed. */
    public static List<Choice> fibres() {
        return FibreMentions.known().stream().map(each -> new Choice(each, "")).toList();
    }

    public static List<Choice> lots(Site site) {
        return site.ledger().all(Kinds.LOT).stream()
                .map(saved -> saved.record())
                .sorted(java.util.Comparator.comparing(Lot::role).thenComparing(Lot::name))
                .map(lot -> new Choice(lot.id().value(), "%s (%s, %s)".formatted(lot.title(), w(lot.role()), lot.id())))
                .toList();
    }

    public static List<Choice> parties(Site site) {
        return site.ledger().all(Kinds.PARTY).stream()
                .map(saved ->
                        new Choice(saved.record().id().value(), saved.record().title()))
                .toList();
    }

    /** The clampings worked on last; any other can be typed. */
    public static List<Choice> clampings(Site site) {
        return site.ledger().latest(Kinds.CLAMPING, 100).stream()
                .map(saved -> saved.record())
                .map(clamping -> new Choice(clamping.id().value(), clamping.title()))
                .toList();
    }
}
