package tenterbook.piece.agreement;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What is agreed about pieces that leave the studio and stay the maker's. */
public enum AgreementKind implements Worded {
    LOAN("loan"),
    /** Given to somebody who sells it for the maker. */
    CONSIGNMENT("consignment");

    private final String key;

    AgreementKind(String key) {
        this.key = key;
    }

    @Override
    public Message word() {
        return Message.of("agreement.kind." + key);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
