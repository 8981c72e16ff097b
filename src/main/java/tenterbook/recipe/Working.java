package tenterbook.recipe;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;

/** Gathers what goes into one figure and what is missing, so that a refusal names all of it at once. */
final class Working {
    /** A weighed or counted amount and a computed one that differ by more are said to disagree (our choice). */
    static final double DISAGREES_BEYOND = 0.10;

    private final String name;
    private final String formula;
    private final List<Figure.Input> inputs = new ArrayList<>();
    private final List<String> missing = new ArrayList<>();

    Working(String name, String formula) {
        this.name = name;
        this.formula = formula;
    }

    /** A quantity in {@code unit}; where it is not known, that is noted as missing. */
    Span take(String what, Quantity quantity, Unit unit) {
        inputs.add(new Figure.Input(what, QuantityWords.entered(quantity)));
        if (!quantity.known()) {
            missing.add(what + (quantity.recorded() ? " is not known" : " is not recorded"));
        } else if (quantity.unit() == Unit.NIGHT && unit != Unit.NIGHT) {
            missing.add(what + " is told in nights, and a night has no fixed length");
        } else if (quantity.unit().dimension() != unit.dimension()) {
            missing.add(what + " is told in " + quantity.unit().symbol() + ", which cannot be turned into "
                    + unit.symbol());
        } else {
            return Span.of(quantity, unit);
        }
        return new Span(null, null, false);
    }

    /** The value of another figure; its refusal is passed on. */
    Span take(Figure figure, Unit unit) {
        if (figure.refused()) {
            inputs.add(new Figure.Input(figure.name(), "not worked out"));
            missing.add(figure.refusal()
                    .replaceFirst("^Not worked out: ", figure.name() + " is not known: ")
                    .replaceFirst("\\.$", ""));
            return new Span(null, null, false);
        }
        return take(figure.name(), figure.value(), unit);
    }

    void note(String what, String text) {
        inputs.add(new Figure.Input(what, text));
    }

    void missing(String reason) {
        missing.add(reason);
    }

    /** What {@code result} gives, or a refusal with everything that is missing. */
    Figure gives(Supplier<Span> result, Unit unit) {
        if (!missing.isEmpty()) {
            return Figure.refused(name, formula, inputs, missing);
        }
        Span span = result.get();
        if (!span.known()) {
            return Figure.refused(
                    name, formula, inputs, List.of("the ranges are open on both sides once put together"));
        }
        return new Figure(name, span.in(unit), formula, inputs, "", "");
    }

    /** {@code found} wins over what was worked out; a disagreement beyond a tenth is stated. */
    static Figure wins(Figure computed, Quantity found, String how, Unit unit) {
        List<Figure.Input> inputs = new ArrayList<>(computed.inputs());
        inputs.add(new Figure.Input("as " + how, QuantityWords.entered(found)));
        return new Figure(
                computed.name(),
                found,
                "as " + how + "; for comparison " + computed.formula(),
                inputs,
                disagreement(computed, found, how, unit),
                "");
    }

    private static String disagreement(Figure computed, Quantity found, String how, Unit unit) {
        if (computed.refused() || found.unit().dimension() != unit.dimension()) {
            return "";
        }
        double gap = Span.gap(Span.of(found, unit), Span.of(computed.value(), unit));
        if (gap <= DISAGREES_BEYOND) {
            return "";
        }
        return "%s as %s is %s, but %s gives %s. The one that was %s is used; one of the inputs may be wrong."
                .formatted(
                        computed.name(),
                        how,
                        QuantityWords.value(found),
                        computed.formula(),
                        QuantityWords.value(computed.value()),
                        how);
    }
}
