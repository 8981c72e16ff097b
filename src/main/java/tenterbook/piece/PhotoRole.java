package tenterbook.piece;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a photograph shows of a piece. */
public enum PhotoRole implements Worded {
    FRONT("front"),
    BACK("back"),
    DETAIL("detail"),
    LAYER("layer"),
    FAULT("fault"),
    IN_PLACE("in place"),
    WORK("at work"),
    PAPER("paper"),
    OTHER("other");

    private final String word;

    PhotoRole(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("piece.photo-role." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
