package tenterbook.piece.condition;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** The state of the whole piece, in four steps (common practice, not from a standard). */
public enum Overall implements Worded {
    GOOD("good"),
    FAIR("fair"),
    POOR("poor"),
    FAILING("failing");

    private final String word;

    Overall(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("condition.overall." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
