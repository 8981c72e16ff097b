package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * A kind of value of a field. Thread-safe.
 *
 * @param <V> what it is in the program
 */
public interface Value<V> {
    /** The stored form; null where nothing is recorded, so that the field is left out. */
    JsonNode write(V value);

    /**
     * Reads the stored form.
     *
     * @param json never missing and never JSON null
     * @param at dotted name of the field, for {@code faults}
     * @return null where it cannot be read, which is then added to the faults, or where it means that nothing is recorded
     */
    V read(JsonNode json, Faults faults, String at);

    /**
     * The stored form of what another program sent: texts are read as if typed, unknown members are faults, and numbers must be
     * plausible. Null where nothing is recorded or it cannot be understood.
     */
    JsonNode understood(JsonNode given, Reading reading, Faults faults, String at);

    /** JSON Schema 2020-12 of what is stored and accepted. */
    ObjectNode schema();
}
