package tenterbook.web.found;

import static tenterbook.web.page.Words.w;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tenterbook.facts.Condition;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.issue.HangTagStatus.Standing;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Piece;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.RecipeFigures;
import tenterbook.recipe.Step;
import tenterbook.recipe.dip.DipTally;

/** Values of columns that take more than one field. */
final class Derived {
    private Derived() {}

    static List<String> boards(PieceFacts facts) {
        return facts.boardUses().stream()
                .map(use -> use.state().isEmpty()
                        ? facts.boardTitle(use.board())
                        : w("search.board-state", "board", facts.boardTitle(use.board()), "state", use.state()))
                .toList();
    }

    static List<String> folds(PieceFacts facts) {
        return facts.clampings().stream()
                .map(Clamping::fold)
                .filter(fold -> !fold.folds().isEmpty())
                .map(fold -> w(fold.inWords()))
                .toList();
    }

    /** Over all clampings; with both ends only where all agree. */
    static Cell layers(PieceFacts facts) {
        List<Quantity> layers = layersOfEach(facts);
        List<String> texts = layers.stream()
                .map(each -> w(QuantityWords.understood(each)))
                .distinct()
                .toList();
        Optional<Quantity> one = oneNumberOfLayers(facts);
        return one.isPresent()
                ? Cell.of(texts.get(0), one.get().low(), one.get().high())
                : Cell.several(texts);
    }

    /** In the clamp; empty where it is not known or differs from clamping to clamping. */
    static Optional<Quantity> oneNumberOfLayers(PieceFacts facts) {
        List<Quantity> layers = layersOfEach(facts);
        boolean agree = layers.size() == facts.clampings().size()
                && layers.stream()
                        .allMatch(each -> each.bounded()
                                && each.low().equals(layers.get(0).low())
                                && each.high().equals(layers.get(0).high()));
        return agree ? layers.stream().findFirst() : Optional.empty();
    }

    private static List<Quantity> layersOfEach(PieceFacts facts) {
        return facts.clampings().stream()
                .map(clamping -> RecipeFigures.of(clamping, facts.cloths()).layers())
                .filter(figure -> !figure.refused())
                .map(figure -> figure.value())
                .toList();
    }

    static List<String> vats(PieceFacts facts) {
        return facts.clampings().stream()
                .flatMap(clamping -> clamping.steps().stream())
                .map(Step::vat)
                .toList();
    }

    static Cell dips(PieceFacts facts) {
        DipTally dips = facts.dips();
        return dips.known() ? Cell.of(w(dips.number()), dips.low(), dips.high()) : Cell.NOT_RECORDED;
    }

    /** Both sides as entered, one alone with which it is. */
    static String size(Piece piece) {
        boolean length = piece.length().known();
        boolean width = piece.width().known();
        if (length && width) {
            return w("found.size", "length", shown(piece.length()), "width", shown(piece.width()));
        }
        if (length) {
            return w("found.size-length", "length", shown(piece.length()));
        }
        return width ? w("found.size-width", "width", shown(piece.width())) : "";
    }

    private static String shown(Quantity side) {
        return w(QuantityWords.withAssumedUnit(side));
    }

    static Cell price(Piece piece) {
        if (piece.price() == null) {
            return Cell.NOT_RECORDED;
        }
        double amount = piece.price().amount().doubleValue();
        return Cell.of(w(piece.price()), amount, amount);
    }

    /** Those shown on the piece's page, at most four. */
    static List<String> colours(PieceFacts facts) {
        return facts.colours().shown().stream()
                .limit(4)
                .map(PieceColour::called)
                .toList();
    }

    static Cell examined(Condition condition) {
        return condition.lastLooked().map(Cell::of).orElse(Cell.NOT_RECORDED);
    }

    static List<String> tags(List<Standing> standings) {
        return standings.stream()
                .map(each -> w(
                        "found.tag",
                        "market",
                        each.market().code().toUpperCase(Locale.ROOT),
                        "state",
                        each.state().word()))
                .toList();
    }
}
