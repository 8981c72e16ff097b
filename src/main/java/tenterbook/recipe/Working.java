package tenterbook.recipe;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Threshold;
import tenterbook.measure.Unit;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** Collects the inputs of one figure and what is missing, so that a refusal names everything at once. */
final class Working {
    /** A measured and a computed amount disagree if they differ by more (our choice). */
    static final double DISAGREES_BEYOND = Threshold.number("amounts-disagree");

    private final Written name;
    private final Written formula;
    private final List<Figure.Input> inputs = new ArrayList<>();
    private final List<Written> missing = new ArrayList<>();

    Working(Written name, Written formula) {
        this.name = name;
        this.formula = formula;
    }

    /** A quantity in {@code unit}; noted as missing where not known. */
    Span take(Written what, Quantity quantity, Unit unit) {
        inputs.add(new Figure.Input(what, QuantityWords.asEntered(quantity)));
        if (!quantity.known()) {
            missing.add(
                    quantity.recorded()
                            ? Message.of("recipe.figure.not-known", "what", what)
                            : Message.of("recipe.figure.not-recorded", "what", what));
        } else if (quantity.unit() == Unit.NIGHT && unit != Unit.NIGHT) {
            missing.add(Message.of("recipe.figure.in-nights", "what", what));
        } else if (quantity.unit().dimension() != unit.dimension()) {
            missing.add(Message.of(
                    "recipe.figure.other-unit",
                    "what",
                    what,
                    "from",
                    quantity.unit().symbol(),
                    "to",
                    unit.symbol()));
        } else {
            return Span.of(quantity, unit);
        }
        return new Span(null, null, false);
    }

    /** The value of another figure, or its refusal. */
    Span take(Figure figure, Unit unit) {
        if (figure.refused()) {
            inputs.add(new Figure.Input(figure.name(), Message.of("recipe.figure.not-worked-out")));
            missing.add(
                    Message.of("recipe.figure.not-known-because", "what", figure.name(), "reasons", figure.reasons()));
            return new Span(null, null, false);
        }
        return take(figure.name(), figure.value(), unit);
    }

    void note(Written what, Written text) {
        inputs.add(new Figure.Input(what, text));
    }

    void missing(Written reason) {
        missing.add(reason);
    }

    /** The result, or a refusal that names everything missing. */
    Figure gives(Supplier<Span> result, Unit unit) {
        if (!missing.isEmpty()) {
            return Figure.refused(name, formula, inputs, missing);
        }
        Span span = result.get();
        if (!span.known()) {
            return Figure.refused(name, formula, inputs, List.of(Message.of("recipe.figure.open")));
        }
        return new Figure(name, span.in(unit), formula, inputs, List.of(), List.of());
    }

    /**
     * {@code found} is preferred to the computed value; a disagreement beyond a tenth is stated.
     *
     * @param how {@code weighed}, {@code counted}, {@code measured} or {@code timed}
     */
    static Figure wins(Figure computed, Quantity found, String how, Unit unit) {
        List<Figure.Input> inputs = new ArrayList<>(computed.inputs());
        inputs.add(new Figure.Input(Message.of("recipe.figure.as", "how", how), QuantityWords.asEntered(found)));
        return new Figure(
                computed.name(),
                found,
                Message.of("recipe.figure.as-beside", "how", how, "formula", computed.formula()),
                inputs,
                disagreement(computed, found, how, unit),
                List.of());
    }

    private static List<Written> disagreement(Figure computed, Quantity found, String how, Unit unit) {
        if (computed.refused() || found.unit().dimension() != unit.dimension()) {
            return List.of();
        }
        double gap = Span.gap(Span.of(found, unit), Span.of(computed.value(), unit));
        if (gap <= DISAGREES_BEYOND) {
            return List.of();
        }
        return List.of(Message.of(
                "recipe.figure.differs",
                "name",
                computed.name(),
                "how",
                how,
                "found",
                QuantityWords.understood(found),
                "formula",
                computed.formula(),
                "computed",
                QuantityWords.understood(computed.value())));
    }
}
