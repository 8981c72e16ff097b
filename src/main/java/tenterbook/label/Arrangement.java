package tenterbook.label;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** How the parts of a label stand to one another; the words are the same in each. */
public enum Arrangement implements Worded {
    /** Everything flush left, one under another; on a hang tag the colours stand at the foot. */
    COLUMN,
    /** The colours across the tag like a hem, over the foot. */
    HEM,
    /** The colours down the left side like a selvedge. */
    SELVEDGE,
    /** What it is on the left, what it is made of on the right. */
    TWO_COLUMNS;

    @Override
    public Message word() {
        return Message.of("label.arrangement." + Issue.word(this));
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
