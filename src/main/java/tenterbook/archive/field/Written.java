package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import tenterbook.measure.LengthUnits;

/** A value that a person writes in one line of text. */
public interface Written<V> extends Value<V> {
    /**
     * @param text not blank
     * @return null where the text says that nothing is recorded
     * @throws IllegalArgumentException with a sentence for the person who typed it
     */
    V parse(String text, Reading reading);

    /** As {@link #parse} takes it; empty where nothing is recorded. */
    String text(V value);

    @Override
    default JsonNode understood(JsonNode given, Reading reading, Faults faults, String at) {
        V value = read(given, faults, at);
        return value == null ? null : write(value);
    }

    /** The same where lengths typed without a unit are read in these. */
    default String text(V value, LengthUnits lengths) {
        return text(value);
    }

    /** The text of a stored value; empty where it cannot be read. */
    default String textOf(JsonNode stored, LengthUnits lengths) {
        V value = stored == null || stored.isMissingNode() || stored.isNull() ? null : read(stored, new Faults(), "");
        return value == null ? "" : text(value, lengths);
    }

    /** The stored form of a text; null where it means nothing recorded or is a fault. */
    default JsonNode fromText(String text, Reading reading, Faults faults, String at) {
        if (text.isBlank()) {
            return null;
        }
        try {
            V value = parse(text.strip(), reading);
            return value == null ? null : write(value);
        } catch (IllegalArgumentException e) {
            faults.add(at, e);
            return null;
        }
    }
}
