package tenterbook.piece.condition;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** How far a part of the piece was examined. */
public enum ExtentExamined implements Worded {
    WHOLE("examined"),
    PART("in part"),
    NOT("not examined");

    private final String word;

    ExtentExamined(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("condition.seen." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
