package tenterbook.piece.condition;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** Whether an observation is likely to get worse. */
public enum Stability implements Worded {
    STABLE("stable"),
    AT_RISK("may get worse"),
    ACTIVE("getting worse");

    private final String word;

    Stability(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("condition.stability." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
