package tenterbook.archive.field;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.words.Refusal;

/**
 * The stored codes of one closed choice, written down apart from Java's names and from the words that people see. A code once used
 * is never used for anything else.
 *
 * @param <E> the choice
 */
public final class Codes<E extends Enum<E>> {
    private final String name;
    private final Map<E, String> codes;
    private final Map<String, E> choices;
    private final List<String> unrecorded;

    private Codes(String name, Map<E, String> codes, Map<String, E> choices, List<String> unrecorded) {
        this.name = name;
        this.codes = codes;
        this.choices = choices;
        this.unrecorded = unrecorded;
    }

    /** Names the choice as message keys do, as in {@code status}. */
    public static <E extends Enum<E>> Builder<E> of(String name, Class<E> type) {
        return new Builder<>(name, type);
    }

    public String name() {
        return name;
    }

    public String code(E choice) {
        return codes.get(choice);
    }

    /** All codes, in the order in which they are offered. */
    public List<String> all() {
        return List.copyOf(codes.values());
    }

    /** The choices that can be made, in the order in which they are offered. */
    public List<E> choices() {
        return List.copyOf(codes.keySet());
    }

    /**
     * @return null for a code by which older programs stored that nothing was recorded
     * @throws IllegalArgumentException where there is no such code
     */
    public E choice(String code) {
        E choice = choices.get(code);
        if (choice == null && !unrecorded.contains(code)) {
            throw Refusal.of("input.no-choice", "found", code, "choices", all());
        }
        return choice;
    }

    /** Codes in the making; every constant of the choice has one. */
    public static final class Builder<E extends Enum<E>> {
        private final String name;
        private final Class<E> type;
        private final Map<E, String> codes;
        private final Map<String, E> choices = new LinkedHashMap<>();
        private final List<String> unrecorded = new ArrayList<>();
        private final List<E> left = new ArrayList<>();

        private Builder(String name, Class<E> type) {
            this.name = name;
            this.type = type;
            this.codes = new EnumMap<>(type);
        }

        public Builder<E> code(E choice, String code) {
            if (codes.put(choice, code) != null || choices.put(code, choice) != null) {
                throw new IllegalStateException("%s: %s or “%s” stands twice".formatted(name, choice, code));
            }
            return this;
        }

        /** A code by which older programs stored that nothing was recorded. */
        public Builder<E> unrecorded(String code) {
            unrecorded.add(code);
            return this;
        }

        /** A constant that stands for 'not recorded' and is never stored. */
        public Builder<E> neverStored(E choice) {
            left.add(choice);
            return this;
        }

        public Codes<E> complete() {
            for (E choice : type.getEnumConstants()) {
                if (!codes.containsKey(choice) && !left.contains(choice)) {
                    throw new IllegalStateException("%s: %s has no stored code".formatted(name, choice));
                }
            }
            return new Codes<>(name, codes, choices, unrecorded);
        }
    }
}
