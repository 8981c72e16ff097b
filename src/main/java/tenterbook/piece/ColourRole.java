package tenterbook.piece;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** Which part of the dyeing a colour belongs to. */
public enum ColourRole implements Worded {
    GROUND("ground"),
    RESIST("resist"),
    LOCAL("local colour"),
    OTHER("other");

    private final String word;

    ColourRole(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("piece.colour-role." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
