package tenterbook.piece;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a care test was made on. */
public enum Specimen implements Worded {
    PIECE("the piece itself"),
    STRIP("a strip dyed with it"),
    /** No evidence for this piece by itself: the maker is asked. */
    OTHER("another cloth or dye");

    private final String word;

    Specimen(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("piece.specimen." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
