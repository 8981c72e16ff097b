package tenterbook.piece.condition;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** How a photograph of an examination was taken. */
public enum PhotoView implements Worded {
    FRONT("front"),
    BACK("back"),
    RAKING_LIGHT("raking light"),
    LIGHT_BEHIND("light from behind"),
    DETAIL("detail"),
    EDGE("edge"),
    HANGING_DEVICE("hanging device"),
    PACKING("packing"),
    OTHER("other");

    private final String word;

    PhotoView(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("condition.view." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
