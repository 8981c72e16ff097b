package tenterbook.piece;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What kind of thing a piece is; label rules depend on it. */
public enum Category implements Worded {
    WALL_HANGING("wall hanging"),
    SCARF("scarf"),
    SHAWL("shawl"),
    GARMENT("garment"),
    YARDAGE("yardage"),
    TABLE_LINEN("table linen"),
    CUSHION("cushion cover"),
    SAMPLE("sample or proof"),
    OTHER("other");

    private final String word;

    Category(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("piece.category." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
