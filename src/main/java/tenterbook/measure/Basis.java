package tenterbook.measure;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** How a quantity is known. */
public enum Basis implements Worded {
    MEASURED("measured"),
    ESTIMATED("estimated"),
    REMEMBERED("remembered"),
    COMPUTED("computed"),
    /** The value is unknown, or its origin is. */
    UNKNOWN("unknown");

    private final String word;

    Basis(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("measure.basis." + word);
    }

    @Override
    public String toString() {
        return word;
    }
}
