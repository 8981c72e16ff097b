package tenterbook.recipe;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.board.BoardPair;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.LotId;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;

/**
 * The figures that follow from a clamping.
 *
 * <p>Lengths in metres, areal weight in g/m² (1 momme is 4.340 g/m², common practice), masses in grams, percent of the
 * dry weight of fibre, liquor in litres at one kilogram a litre (common practice), times in minutes. A range stays a
 * range: ends are worked out with ends. What was weighed, counted or timed wins over what can be worked out, and a
 * difference of more than a tenth is stated. An input that is not known refuses the figure and is named; it never counts
 * as zero.
 *
 * @param layers in the clamp
 * @param clothMass of all cuts together, dry
 * @param steps figures of each step, in the order of the clamping's steps
 * @param dips over all dip steps
 * @param contact time in the vat over all dip steps
 * @param airing time between dips over all dip steps
 */
public record RecipeFigures(
        Figure layers, Figure clothMass, List<StepFigures> steps, Figure dips, Figure contact, Figure airing) {

    /**
     * Figures of one step.
     *
     * @param charges one for each charge, in order
     * @param liquor volume of the bath
     */
    public record StepFigures(List<ChargeFigures> charges, Figure liquor, Figure dips, Figure contact, Figure airing) {
        public StepFigures {
            charges = List.copyOf(charges);
        }
    }

    /**
     * Figures of one charge.
     *
     * @param lot null where the charge names none
     * @param wof percent of the weight of fibre
     */
    public record ChargeFigures(@Nullable LotId lot, Figure grams, Figure wof) {}

    public RecipeFigures {
        steps = List.copyOf(steps);
    }

    /**
     * @param cloths the bolts that the cuts name; one that is missing refuses the mass
     */
    public static RecipeFigures of(Clamping clamping, Map<ClothId, Cloth> cloths) {
        Figure mass = clothMass(clamping.cuts(), cloths);
        List<StepFigures> steps =
                clamping.steps().stream().map(step -> step(step, mass)).toList();
        List<StepFigures> dipping = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Step step = clamping.steps().get(i);
            if (step.dipped()) {
                dipping.add(steps.get(i));
            }
        }
        return new RecipeFigures(
                layers(clamping.fold()),
                mass,
                steps,
                sum("dips in all", Unit.COUNT, dipping.stream().map(StepFigures::dips)),
                sum("time in the vat, in all", Unit.MINUTE, dipping.stream().map(StepFigures::contact)),
                sum("airing, in all", Unit.MINUTE, dipping.stream().map(StepFigures::airing)));
    }

    private static Figure layers(FoldScheme fold) {
        Working working = new Working("layers", "the panels of every fold, multiplied");
        for (Fold each : fold.folds()) {
            working.note(each.style() + " along the " + each.axis(), String.valueOf(each.panels()));
        }
        if (fold.folds().isEmpty()) {
            working.missing("the folds are not recorded");
            if (!fold.layersCounted().known()) {
                working.missing("nobody counted the layers at the clamp");
            }
        }
        int stacked = LayerMap.of(fold.folds()).layers();
        Figure folded = working.gives(() -> Span.exactly(stacked), Unit.COUNT);
        if (!fold.layersCounted().known()) {
            return folded;
        }
        Figure counted = Working.wins(folded, fold.layersCounted(), "counted", Unit.COUNT);
        // A layer too many or too few is no matter of a tenth: any difference counts here.
        boolean differs = !folded.refused()
                && fold.layersCounted().unit() == Unit.COUNT
                && Span.gap(Span.of(fold.layersCounted(), Unit.COUNT), Span.exactly(stacked)) > 0;
        String said = differs
                ? "%s layers were counted, but these folds make %d. The count is used; the folds may be recorded wrongly, or an end was flipped or left out."
                        .formatted(QuantityWords.value(fold.layersCounted()), stacked)
                : "";
        return new Figure(counted.name(), counted.value(), counted.formula(), counted.inputs(), said, "");
    }

    private static Figure clothMass(List<Cut> cuts, Map<ClothId, Cloth> cloths) {
        List<Figure> each = new ArrayList<>();
        for (int i = 0; i < cuts.size(); i++) {
            each.add(cutMass("cut " + (i + 1), cuts.get(i), cloths));
        }
        if (each.isEmpty()) {
            Working nothing = new Working("mass of the cloth", "length × width × areal weight × number of cuts");
            nothing.missing("no cut of cloth is recorded");
            return nothing.gives(() -> Span.exactly(0), Unit.GRAM);
        }
        if (each.size() == 1) {
            Figure only = each.get(0);
            return new Figure(
                    "mass of the cloth",
                    only.value(),
                    only.formula(),
                    only.inputs(),
                    only.disagreement(),
                    only.refusal());
        }
        return sum("mass of the cloth", Unit.GRAM, each.stream());
    }

    private static Figure cutMass(String which, Cut cut, Map<ClothId, Cloth> cloths) {
        Working working = new Working("mass of " + which, "length × width × areal weight × number of cuts");
        Span length = working.take("length of " + which, cut.length(), Unit.METRE);
        Span width = working.take("width of " + which, cut.width(), Unit.METRE);
        Span count = Span.exactly(1);
        if (cut.count().recorded()) {
            count = working.take("number of " + which, cut.count(), Unit.COUNT);
        } else {
            working.note("number of " + which, "1 (not recorded, counts as one)");
        }
        Cloth cloth = cut.cloth() == null ? null : cloths.get(cut.cloth());
        Span weight = Span.exactly(Double.NaN);
        if (cut.cloth() == null) {
            working.missing("the bolt of " + which + " is not recorded");
        } else if (cloth == null) {
            working.missing("the bolt " + cut.cloth() + " is not in the archive");
        } else {
            weight = working.take("areal weight of " + cut.cloth(), cloth.arealWeight(), Unit.GRAM_PER_SQUARE_METRE);
        }
        Span square = length.times(width);
        Span each = square.times(weight);
        Span all = each.times(count);
        Figure computed = working.gives(() -> all, Unit.GRAM);
        return cut.weighed().known() ? Working.wins(computed, cut.weighed(), "weighed", Unit.GRAM) : computed;
    }

    private static StepFigures step(Step step, Figure mass) {
        DipFigures dips = DipFigures.of(step.dips());
        return new StepFigures(
                step.charges().stream().map(charge -> charge(charge, mass)).toList(),
                liquor(step, mass),
                dips.count(),
                dips.contact(),
                dips.airing());
    }

    private static ChargeFigures charge(Charge charge, Figure mass) {
        String lot = charge.lot() == null ? "the charge" : charge.lot().value();
        Working forward = new Working("grams of " + lot, "% WOF ÷ 100 × mass of the cloth");
        Span percent = forward.take("% WOF of " + lot, charge.wof(), Unit.PERCENT);
        Span cloth = forward.take(mass, Unit.GRAM);
        Figure grams = forward.gives(() -> percent.times(cloth).times(0.01), Unit.GRAM);
        if (charge.weighed().known()) {
            grams = Working.wins(grams, charge.weighed(), "weighed", Unit.GRAM);
        }
        Working back = new Working("% WOF of " + lot, "grams ÷ mass of the cloth × 100");
        Span weighed = back.take("grams of " + lot, charge.weighed(), Unit.GRAM);
        Span under = back.take(mass, Unit.GRAM);
        Figure wof = back.gives(() -> weighed.over(under).times(100), Unit.PERCENT);
        if (charge.wof().known()) {
            wof = wof.refused()
                    ? new Figure(
                            wof.name(),
                            charge.wof(),
                            "as entered",
                            List.of(new Figure.Input("as entered", QuantityWords.entered(charge.wof()))),
                            "",
                            "")
                    : new Figure(wof.name(), wof.value(), wof.formula(), wof.inputs(), grams.disagreement(), "");
        }
        return new ChargeFigures(charge.lot(), grams, wof);
    }

    private static Figure liquor(Step step, Figure mass) {
        Working working = new Working("liquor", "liquor ratio × mass of the cloth in kg, at 1 kg a litre");
        Span ratio = working.take("liquor ratio", step.liquorRatio(), Unit.RATIO);
        Span cloth = working.take(mass, Unit.KILOGRAM);
        Figure computed = working.gives(() -> ratio.times(cloth), Unit.LITRE);
        return step.liquor().known() ? Working.wins(computed, step.liquor(), "measured", Unit.LITRE) : computed;
    }

    private static Figure sum(String name, Unit unit, Stream<Figure> figures) {
        List<Figure> parts = figures.toList();
        Working working = new Working(
                name, parts.stream().map(Figure::formula).distinct().collect(Collectors.joining("; ")) + "; summed");
        if (parts.isEmpty()) {
            working.missing("no dip series is recorded");
        }
        Span total = Span.exactly(0);
        for (Figure part : parts) {
            total = total.plus(working.take(part, unit));
        }
        Span all = total;
        Figure made = working.gives(() -> all, unit);
        String disagreements = parts.stream()
                .map(Figure::disagreement)
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(" "));
        return new Figure(made.name(), made.value(), made.formula(), made.inputs(), disagreements, made.refusal());
    }

    /**
     * The least cloth that covers the board in every panel, where the cloth's length lies along the board's: length, then
     * width, in centimetres.
     */
    public static List<Figure> clothToCover(FoldScheme fold, BoardPair board) {
        LayerMap map = LayerMap.of(fold.folds());
        return List.of(
                cover("length of cloth to cover the board", "length of the board", map.rows(), board.length(), fold),
                cover("width of cloth to cover the board", "width of the board", map.columns(), board.width(), fold));
    }

    private static Figure cover(String name, String side, int panels, Quantity board, FoldScheme fold) {
        Working working = new Working(name, "panels × " + side);
        working.note("panels", String.valueOf(panels));
        if (fold.folds().isEmpty()) {
            working.missing("the folds are not recorded");
        }
        Span one = working.take(side, board, Unit.CENTIMETRE);
        return working.gives(() -> one.times(panels), Unit.CENTIMETRE);
    }
}
