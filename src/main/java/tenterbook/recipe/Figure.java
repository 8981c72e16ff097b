package tenterbook.recipe;

import java.util.List;
import tenterbook.measure.Quantity;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * One figure derived from the record, with its derivation.
 *
 * @param name what it is, as in 'mass of the cloth'
 * @param value with its unit; {@link Quantity#UNRECORDED} where refused. Its basis is {@code COMPUTED}, or that of the weighed
 *     or counted value
 * @param formula in words and symbols
 * @param inputs inputs as entered
 * @param disagreements contradictions in the record, in sentences
 * @param missing why there is no value and what is missing; empty where there is one
 */
public record Figure(
        Written name,
        Quantity value,
        Written formula,
        List<Input> inputs,
        List<Written> disagreements,
        List<Written> missing) {
    public record Input(Written name, Written text) {}

    public Figure {
        inputs = List.copyOf(inputs);
        disagreements = List.copyOf(disagreements);
        missing = List.copyOf(missing);
        if (missing.isEmpty() != value.known()) {
            throw new IllegalStateException("A figure has either a value or a reason why not; see " + name);
        }
    }

    static Figure refused(Written name, Written formula, List<Input> inputs, List<Written> reasons) {
        return new Figure(name, Quantity.UNRECORDED, formula, inputs, List.of(), reasons);
    }

    /** In sentences; empty where there is no disagreement. */
    public Written disagreement() {
        return new Joined(" ", disagreements);
    }

    /** Why there is no value, in a sentence; empty where there is one. */
    public Written refusal() {
        return refused() ? Message.of("recipe.figure.refused", "reasons", reasons()) : Joined.NOTHING;
    }

    Written reasons() {
        return new Joined("; ", missing);
    }

    public boolean refused() {
        return !missing.isEmpty();
    }
}
