package tenterbook.recipe;

import java.util.List;
import tenterbook.measure.Quantity;

/**
 * One figure that follows from what was recorded, with how it was found.
 *
 * @param name what it is, as in 'mass of the cloth'
 * @param value with its unit; {@link Quantity#UNRECORDED} where refused. {@code COMPUTED} where it was worked out; what
 *     was weighed or counted keeps its own basis
 * @param formula in words and symbols
 * @param inputs what went in, as it was entered
 * @param disagreement how two recorded things contradict each other, in a sentence; empty where they do not
 * @param refusal why there is no value and what is missing, in a sentence; empty where there is one
 */
public record Figure(
        String name, Quantity value, String formula, List<Input> inputs, String disagreement, String refusal) {
    /** One thing that went into a figure. */
    public record Input(String name, String text) {}

    public Figure {
        inputs = List.copyOf(inputs);
        if (refusal.isEmpty() != value.known()) {
            throw new IllegalArgumentException("A figure has either a value or a reason why not; see " + name);
        }
    }

    static Figure refused(String name, String formula, List<Input> inputs, List<String> reasons) {
        return new Figure(
                name, Quantity.UNRECORDED, formula, inputs, "", "Not worked out: " + String.join("; ", reasons) + ".");
    }

    public boolean refused() {
        return !refusal.isEmpty();
    }
}
