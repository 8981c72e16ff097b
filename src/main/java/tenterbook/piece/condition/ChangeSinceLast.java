package tenterbook.piece.condition;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** The examiner's judgement of an observation that an earlier examination has. */
public enum ChangeSinceLast implements Worded {
    STILL_THERE("still there"),
    WORSE("worse"),
    BETTER("better"),
    GONE("gone"),
    NOT_CHECKED("not checked");

    private final String word;

    ChangeSinceLast(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("condition.standing." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
