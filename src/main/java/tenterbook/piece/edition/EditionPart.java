package tenterbook.piece.edition;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** As what a piece stands in an edition or set. Each is numbered apart. The kinds of proof are common practice. */
public enum EditionPart implements Worded {
    /** One of the numbered pieces. */
    COPY("copy"),
    PROOF("proof"),
    ARTISTS_PROOF("artists-proof"),
    TRIAL_PROOF("trial-proof"),
    STATE_PROOF("state-proof"),
    /** One piece of a set, whose pieces differ. */
    OF_SET("of-set");

    private final String code;

    EditionPart(String code) {
        this.code = code;
    }

    public boolean proof() {
        return this != COPY && this != OF_SET;
    }

    @Override
    public Message word() {
        return Message.of("edition.part." + code);
    }

    @Override
    public String toString() {
        return code;
    }
}
