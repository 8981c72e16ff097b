package tenterbook.archive.field;

import java.util.Map;

/** The values of one record or part by stored name, from which it is built. */
public final class Values {
    private final Map<String, Integer> places;
    private final Object[] values;

    Values(Map<String, Integer> places) {
        this.places = places;
        this.values = new Object[places.size()];
    }

    void put(int place, Object value) {
        values[place] = value;
    }

    /**
     * The value of a field, of whatever type its description gives it; null where nothing is recorded.
     *
     * @throws IllegalStateException where no field has this name, which is an error in the description
     */
    @SuppressWarnings("unchecked")
    public <V> V get(String name) {
        Integer place = places.get(name);
        if (place == null) {
            throw new IllegalStateException("No field is called “%s”; there are %s".formatted(name, places.keySet()));
        }
        return (V) values[place];
    }

    /** As {@link #get}, with {@code otherwise} where nothing is recorded. */
    public <V> V get(String name, V otherwise) {
        V value = get(name);
        return value == null ? otherwise : value;
    }
}
