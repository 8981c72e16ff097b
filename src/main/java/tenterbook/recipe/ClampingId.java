package tenterbook.recipe;

import tenterbook.measure.Identifier;
import tenterbook.words.Message;

/** The name of a clamping, as in {@code C24-007}. */
public record ClampingId(String value) implements Identifier {
    public ClampingId {
        value = Identifier.checked(Message.of("recipe.kind.clamping"), value);
    }

    @Override
    public String toString() {
        return value;
    }
}
