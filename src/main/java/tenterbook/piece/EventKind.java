package tenterbook.piece;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What happened to a piece after it was made. */
public enum EventKind implements Worded {
    PHOTOGRAPHED("photographed"),
    SHOWN("shown"),
    CONSIGNED("consigned"),
    LENT("lent"),
    RETURNED("returned"),
    SOLD("sold"),
    GIVEN("given"),
    MENDED("mended"),
    WASHED("washed"),
    DYED_AGAIN("dyed again"),
    EXAMINED("examined"),
    RESERVED("reserved"),
    RELEASED("released"),
    MOVED("moved"),
    PRICED("priced"),
    SECOND("second"),
    LOST("lost"),
    FOUND("found"),
    DESTROYED("destroyed"),
    OTHER("other");

    private final String word;

    EventKind(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("piece.event." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
