package tenterbook.archive.field;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The values read from one record or part, by stored name, for building it. */
public final class Values {
    private final Map<String, Object> values = new HashMap<>();
    private final List<String> names;

    Values(List<String> names) {
        this.names = names;
    }

    void put(String name, Object value) {
        values.put(name, value);
    }

    /**
     * The value of a field, of whatever type its description gives it; null where nothing is recorded.
     *
     * @throws IllegalStateException where no field has this name, which is a slip in the description
     */
    @SuppressWarnings("unchecked")
    public <V> V get(String name) {
        if (!names.contains(name)) {
            throw new IllegalStateException("No field is called “%s”; there are %s".formatted(name, names));
        }
        return (V) values.get(name);
    }

    /** As {@link #get}, with {@code otherwise} where nothing is recorded. */
    public <V> V get(String name, V otherwise) {
        V value = get(name);
        return value == null ? otherwise : value;
    }
}
