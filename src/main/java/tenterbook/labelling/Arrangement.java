package tenterbook.labelling;

import tenterbook.labelling.rule.CodedChoice;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** The arrangement of the parts of a label; the words are the same in each. */
public enum Arrangement implements CodedChoice, Worded {
    /** Everything flush left, one under another; on a hang tag the colours stand at the foot. */
    COLUMN("column"),
    /** The colours across the tag like a hem, over the foot. */
    HEM("hem"),
    /** The colours down the left side like a selvedge. */
    SELVEDGE("selvedge"),
    /** What it is on the left, what it is made of on the right. */
    TWO_COLUMNS("two-columns"),
    /** Each part in a row, its heading on the left. */
    ROWS("rows");

    private final String code;

    Arrangement(String code) {
        this.code = code;
    }

    @Override
    public String code() {
        return code;
    }

    @Override
    public Message word() {
        return Message.of("label.arrangement." + code);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
