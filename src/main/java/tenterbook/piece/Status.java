package tenterbook.piece;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What happened to a piece in the end. */
public enum Status implements Worded {
    IN_STOCK("in stock"),
    KEPT("kept"),
    RESERVED("reserved"),
    CONSIGNED("consigned"),
    ON_LOAN("on loan"),
    HANGING("hanging"),
    SOLD("sold"),
    GIVEN("given"),
    SECOND("second"),
    LOST("lost"),
    DESTROYED("destroyed");

    private final String word;

    Status(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("piece.status." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
