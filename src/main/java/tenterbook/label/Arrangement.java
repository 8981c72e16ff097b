package tenterbook.label;

/** How the parts of a label stand to one another; the words are the same in each. */
public enum Arrangement implements Coded {
    /** Everything flush left, one under another; on a hang tag the colours stand at the foot. */
    COLUMN("column", "in one column"),
    /** The colours across the tag like a hem, over the foot. */
    HEM("hem", "with a hem"),
    /** The colours down the left side like a selvedge. */
    SELVEDGE("selvedge", "with a selvedge"),
    /** What it is on the left, what it is made of on the right. */
    TWO_COLUMNS("two-columns", "in two columns");

    private final String code;
    private final String word;

    Arrangement(String code, String word) {
        this.code = code;
        this.word = word;
    }

    @Override
    public String code() {
        return code;
    }

    @Override
    public String toString() {
        return word;
    }
}
