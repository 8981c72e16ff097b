package tenterbook.piece.fair;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** Why goods cross a border, as a customs list states it. */
public enum CustomsPurpose implements Worded {
    SALE("sale"),
    /** Shown for a time and taken back. */
    TEMPORARY("temporary");

    private final String code;

    CustomsPurpose(String code) {
        this.code = code;
    }

    /** As in an address and in records. */
    public String code() {
        return code;
    }

    @Override
    public Message word() {
        return Message.of("fair.purpose." + code);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
