package tenterbook.piece.label;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a part of a piece besides its cloth is, as far as the rules of fibre content differ by it. */
public enum ComponentKind implements Worded {
    /** The main lining. */
    LINING("lining"),
    EMBROIDERY("embroidery"),
    /** Elastic thread or edge at limited points. */
    ELASTIC("elastic"),
    /** Fringe, braid, edging or binding that forms no integral part. */
    TRIMMING("trimming"),
    /** Pure decoration that can be seen and taken off. */
    DECORATION("decoration"),
    /** Another section of cloth, as a back, a pocket or a second panel. */
    SECTION("section");

    private final String word;

    ComponentKind(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("piece.component." + word);
    }

    @Override
    public String toString() {
        return word;
    }
}
