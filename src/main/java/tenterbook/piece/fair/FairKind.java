package tenterbook.piece.fair;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** Where pieces are shown or sold for some days. */
public enum FairKind implements Worded {
    FAIR("fair"),
    EXHIBITION("exhibition"),
    MARKET("market");

    private final String key;

    FairKind(String key) {
        this.key = key;
    }

    @Override
    public Message word() {
        return Message.of("fair.kind." + key);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
