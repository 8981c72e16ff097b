package tenterbook.piece.condition;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** Why a piece was examined. */
public enum Reason implements Worded {
    BEFORE_LOAN("before a loan"),
    DEPARTURE("on departure"),
    ARRIVAL("on arrival"),
    RETURN("on return"),
    SALE("before a sale"),
    AFTER_WASH("after washing"),
    ROUTINE("routine"),
    OTHER("other");

    private final String word;

    Reason(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("condition.reason." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
