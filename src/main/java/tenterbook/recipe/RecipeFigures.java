package tenterbook.recipe;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.LotId;
import tenterbook.measure.NumberWords;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * The figures derived from a clamping.
 *
 * <p>Lengths in metres, areal weight in g/m² (1 momme is 4.340 g/m², common practice), masses in grams, percent of the dry
 * weight of fibre, liquor in litres at one kilogram a litre (common practice), times in minutes. A range stays a range. A
 * weighed, counted or timed value is preferred to a computed one, and a difference of more than a tenth is stated. An unknown
 * input refuses the figure and is named; it never counts as zero.
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
        Figure mass = ClothMass.of(clamping.cuts(), cloths);
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
                sum(
                        Message.of("recipe.figure.dips-in-all"),
                        Unit.COUNT,
                        dipping.stream().map(StepFigures::dips)),
                sum(
                        Message.of("recipe.figure.contact-in-all"),
                        Unit.MINUTE,
                        dipping.stream().map(StepFigures::contact)),
                sum(
                        Message.of("recipe.figure.airing-in-all"),
                        Unit.MINUTE,
                        dipping.stream().map(StepFigures::airing)));
    }

    private static Figure layers(FoldScheme fold) {
        Working working = new Working(Message.of("recipe.figure.layers"), Message.of("recipe.figure.layers-formula"));
        for (Fold each : fold.folds()) {
            working.note(
                    Message.of("recipe.figure.fold", "style", each.style(), "axis", each.axis()),
                    NumberWords.plain(each.panels()));
        }
        if (fold.folds().isEmpty()) {
            working.missing(Message.of("recipe.figure.no-folds"));
            if (!fold.layersCounted().known()) {
                working.missing(Message.of("recipe.figure.not-counted"));
            }
        }
        int stacked = LayerMap.of(fold.folds()).layers();
        Figure folded = working.gives(() -> Span.exactly(stacked), Unit.COUNT);
        if (!fold.layersCounted().known()) {
            return folded;
        }
        Figure counted = Working.wins(folded, fold.layersCounted(), "counted", Unit.COUNT);
        // Layers are whole numbers: any difference counts.
        boolean differs = !folded.refused()
                && fold.layersCounted().unit() == Unit.COUNT
                && Span.gap(Span.of(fold.layersCounted(), Unit.COUNT), Span.exactly(stacked)) > 0;
        List<Written> disagreements = differs
                ? List.of(Message.of(
                        "recipe.figure.layers-differ",
                        "counted",
                        QuantityWords.understood(fold.layersCounted()),
                        "folded",
                        stacked))
                : List.of();
        return new Figure(
                counted.name(), counted.value(), counted.formula(), counted.inputs(), disagreements, List.of());
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
        Written lot = charge.lot() == null
                ? Message.of("recipe.figure.charge")
                : Message.of("recipe.figure.lot", "id", charge.lot());
        Working forward = new Working(
                Message.of("recipe.figure.grams-of", "lot", lot), Message.of("recipe.figure.grams-formula"));
        Span percent = forward.take(Message.of("recipe.figure.wof-of", "lot", lot), charge.wof(), Unit.PERCENT);
        Span cloth = forward.take(mass, Unit.GRAM);
        Figure grams = forward.gives(() -> percent.times(cloth).times(0.01), Unit.GRAM);
        if (charge.weighed().known()) {
            grams = Working.wins(grams, charge.weighed(), "weighed", Unit.GRAM);
        }
        Working back =
                new Working(Message.of("recipe.figure.wof-of", "lot", lot), Message.of("recipe.figure.wof-formula"));
        Span weighed = back.take(Message.of("recipe.figure.grams-of", "lot", lot), charge.weighed(), Unit.GRAM);
        Span under = back.take(mass, Unit.GRAM);
        Figure wof = back.gives(() -> weighed.over(under).times(100), Unit.PERCENT);
        if (charge.wof().known()) {
            wof = wof.refused()
                    ? new Figure(
                            wof.name(),
                            charge.wof(),
                            Message.of("recipe.figure.as-entered"),
                            List.of(new Figure.Input(
                                    Message.of("recipe.figure.as-entered"), QuantityWords.asEntered(charge.wof()))),
                            List.of(),
                            List.of())
                    : new Figure(
                            wof.name(), wof.value(), wof.formula(), wof.inputs(), grams.disagreements(), List.of());
        }
        return new ChargeFigures(charge.lot(), grams, wof);
    }

    private static Figure liquor(Step step, Figure mass) {
        Working working = new Working(Message.of("recipe.figure.liquor"), Message.of("recipe.figure.liquor-formula"));
        Span ratio = working.take(Message.of("recipe.figure.liquor-ratio"), step.liquorRatio(), Unit.RATIO);
        Span cloth = working.take(mass, Unit.KILOGRAM);
        Figure computed = working.gives(() -> ratio.times(cloth), Unit.LITRE);
        return step.liquor().known() ? Working.wins(computed, step.liquor(), "measured", Unit.LITRE) : computed;
    }

    static Figure sum(Written name, Unit unit, Stream<Figure> figures) {
        List<Figure> parts = figures.toList();
        Working working = new Working(
                name,
                Message.of(
                        "recipe.figure.summed",
                        "formulas",
                        new Joined(
                                "; ",
                                parts.stream().map(Figure::formula).distinct().toList())));
        if (parts.isEmpty()) {
            working.missing(Message.of("recipe.figure.no-dips"));
        }
        Span total = Span.exactly(0);
        for (Figure part : parts) {
            total = total.plus(working.take(part, unit));
        }
        Span all = total;
        Figure made = working.gives(() -> all, unit);
        List<Written> disagreements =
                parts.stream().flatMap(part -> part.disagreements().stream()).toList();
        return new Figure(made.name(), made.value(), made.formula(), made.inputs(), disagreements, made.missing());
    }
}
