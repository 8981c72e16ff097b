package tenterbook.archive.field;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import tenterbook.words.Conventions;
import tenterbook.words.Explained;
import tenterbook.words.Joined;
import tenterbook.words.Message;

/**
 * What is wrong with an input, all of it, each sentence under the dotted name of its field, as in {@code events.0.price}. Of
 * several faults of one field the first stays. Not for several threads.
 */
public final class Faults {
    private final Map<String, tenterbook.words.Written> sentences = new LinkedHashMap<>();
    private final boolean placed;

    public Faults() {
        this(true);
    }

    private Faults(boolean placed) {
        this.placed = placed;
    }

    /** Faults whose places are not worked out: for reading what is nearly always whole, in two thirds of the time. */
    static Faults unplaced() {
        return new Faults(false);
    }

    public void add(String field, tenterbook.words.Written sentence) {
        sentences.putIfAbsent(field, sentence);
    }

    /** A sentence in one language. */
    public void add(String field, String sentence) {
        add(field, conventions -> sentence);
    }

    /** The sentence of a refusal. */
    void add(String field, IllegalArgumentException refusal) {
        if (refusal instanceof Explained explained) {
            add(field, explained.explanation());
        } else {
            add(field, refusal.getMessage());
        }
    }

    public boolean isEmpty() {
        return sentences.isEmpty();
    }

    /** Sentences by field, in the order found. */
    public Map<String, tenterbook.words.Written> all() {
        return Collections.unmodifiableMap(sentences);
    }

    /** Whether the field or anything inside it has a fault. */
    public boolean within(String field) {
        return field.isEmpty() || sentences.isEmpty()
                ? !sentences.isEmpty()
                : sentences.keySet().stream().anyMatch(name -> name.equals(field) || name.startsWith(field + "."));
    }

    /** The dotted name of a row, from 0. */
    String inside(String at, int row) {
        return placed ? inside(at, Integer.toString(row)) : "";
    }

    /** All in one text, as in '‘length’: …. ‘events.0.price’: ….' */
    public Joined inOneLine() {
        return new Joined(
                " ",
                sentences.entrySet().stream()
                        .map(fault -> fault.getKey().isEmpty()
                                ? new Ended(fault.getValue())
                                : Message.of(
                                        "input.placed",
                                        "field",
                                        fault.getKey(),
                                        "sentence",
                                        new Ended(fault.getValue())))
                        .toList());
    }

    /** A sentence with a stop at its end, whether it was written with one or not, so that another can follow. */
    private record Ended(tenterbook.words.Written sentence) implements tenterbook.words.Written {
        @Override
        public String in(Conventions conventions) {
            String text = sentence.in(conventions);
            return text.matches("(?s).*[.!?…]") ? text : text + ".";
        }
    }

    /** The dotted name of a field inside another. */
    public String inside(String at, String name) {
        return !placed ? "" : at.isEmpty() || name.isEmpty() ? at + name : at + "." + name;
    }
}
