package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * A kind of value that a field holds. Safe for many threads.
 *
 * @param <V> what it is in the program
 */
public interface Value<V> {
    /** As it is stored; null where nothing is recorded, so that the field is left out. */
    JsonNode write(V value);

    /**
     * The stored form read.
     *
     * @param json never missing and never JSON null
     * @param at dotted name of the field, for {@code faults}
     * @return null where it cannot be read, which is then among the faults, or where it says that nothing is recorded
     */
    V read(JsonNode json, Faults faults, String at);

    /**
     * What another program sent, as it will be stored: texts are read as a person's, unknown members are faults, and numbers must
     * make sense. Null where nothing is recorded or it cannot be understood.
     */
    JsonNode understood(JsonNode given, Reading reading, Faults faults, String at);

    /** JSON Schema 2020-12 of what is stored and accepted. */
    ObjectNode schema();
}
