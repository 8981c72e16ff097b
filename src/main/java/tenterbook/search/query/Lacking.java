package tenterbook.search.query;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a record can lack. */
public enum Lacking implements Worded {
    TITLE("title"),
    PHOTOGRAPH("photograph"),
    PRICE("price"),
    SIZE("size"),
    MASS("mass"),
    DATE("date"),
    DIPS("dips"),
    CLOTH("cloth"),
    BOARD("board");

    private final String code;

    Lacking(String code) {
        this.code = code;
    }

    /** As in addresses. */
    public String code() {
        return code;
    }

    @Override
    public Message word() {
        return Message.of("question.lacking." + code);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
