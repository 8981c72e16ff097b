package tenterbook.material;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What the content of a cloth is known from. */
public enum Evidence implements Worded {
    SUPPLIER("supplier"),
    INVOICE("invoice"),
    LABORATORY("laboratory"),
    /** Tells kinds of fibre apart, never shares; common practice. */
    BURN_TEST("burn-test"),
    OWN_GUESS("own-guess");

    private final String key;

    Evidence(String key) {
        this.key = key;
    }

    /** Whether it can support a percentage that is printed. */
    public boolean supportsShare() {
        return this == SUPPLIER || this == INVOICE || this == LABORATORY;
    }

    @Override
    public Message word() {
        return Message.of("material.evidence." + key);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
