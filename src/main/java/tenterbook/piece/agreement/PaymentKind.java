package tenterbook.piece.agreement;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** Which way money went between the maker and the other party. */
public enum PaymentKind implements Worded {
    /** From the other party to the maker. */
    PAID("paid"),
    /** From the maker back to the other party. */
    REFUNDED("refunded");

    private final String key;

    PaymentKind(String key) {
        this.key = key;
    }

    @Override
    public Message word() {
        return Message.of("agreement.payment." + key);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
