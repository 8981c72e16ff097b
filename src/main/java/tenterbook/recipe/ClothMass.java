package tenterbook.recipe;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.measure.Unit;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The dry mass of the cuts of a clamping, in grams: weighed, else from their size and the areal weight of the cloth. */
final class ClothMass {
    private ClothMass() {}

    static Figure of(List<Cut> cuts, Map<ClothId, Cloth> cloths) {
        List<Figure> each = new ArrayList<>();
        for (int i = 0; i < cuts.size(); i++) {
            each.add(cutMass(Message.of("recipe.figure.cut", "number", i + 1), cuts.get(i), cloths));
        }
        if (each.isEmpty()) {
            Working nothing = new Working(Message.of("recipe.figure.mass"), Message.of("recipe.figure.mass-formula"));
            nothing.missing(Message.of("recipe.figure.no-cut"));
            return nothing.gives(() -> Span.exactly(0), Unit.GRAM);
        }
        if (each.size() == 1) {
            Figure only = each.get(0);
            return new Figure(
                    Message.of("recipe.figure.mass"),
                    only.value(),
                    only.formula(),
                    only.inputs(),
                    only.disagreements(),
                    only.missing());
        }
        return RecipeFigures.sum(Message.of("recipe.figure.mass"), Unit.GRAM, each.stream());
    }

    private static Figure cutMass(Written which, Cut cut, Map<ClothId, Cloth> cloths) {
        Working working = new Working(
                Message.of("recipe.figure.mass-of", "what", which), Message.of("recipe.figure.mass-formula"));
        Span length = working.take(Message.of("recipe.figure.length-of", "what", which), cut.length(), Unit.METRE);
        Span width = working.take(Message.of("recipe.figure.width-of", "what", which), cut.width(), Unit.METRE);
        Span count = Span.exactly(1);
        if (cut.count().recorded()) {
            count = working.take(Message.of("recipe.figure.number-of", "what", which), cut.count(), Unit.COUNT);
        } else {
            working.note(
                    Message.of("recipe.figure.number-of", "what", which), Message.of("recipe.figure.counts-as-one"));
        }
        Cloth cloth = cut.cloth() == null ? null : cloths.get(cut.cloth());
        Span weight = Span.exactly(Double.NaN);
        if (cut.cloth() == null) {
            working.missing(Message.of("recipe.figure.no-bolt", "what", which));
        } else if (cloth == null) {
            working.missing(Message.of("recipe.figure.bolt-missing", "bolt", cut.cloth()));
        } else {
            weight = working.take(
                    Message.of("recipe.figure.areal-weight-of", "bolt", cut.cloth()),
                    cloth.arealWeight(),
                    Unit.GRAM_PER_SQUARE_METRE);
        }
        Span square = length.times(width);
        Span each = square.times(weight);
        Span all = each.times(count);
        Figure computed = working.gives(() -> all, Unit.GRAM);
        return cut.weighed().known() ? Working.wins(computed, cut.weighed(), "weighed", Unit.GRAM) : computed;
    }
}
