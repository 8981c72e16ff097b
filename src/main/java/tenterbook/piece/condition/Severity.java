package tenterbook.piece.condition;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** How bad an observation is. */
public enum Severity implements Worded {
    SLIGHT("slight"),
    MODERATE("moderate"),
    SEVERE("severe");

    private final String word;

    Severity(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("condition.severity." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
