package tenterbook.label;

/** How the parts of a label stand to one another; the words are the same in each. */
public enum Arrangement {
    /** Everything flush left, one under another; on a hang tag the colours stand at the foot. */
    COLUMN("in one column"),
    /** The colours across the tag like a hem, over the foot. */
    HEM("with a hem"),
    /** The colours down the left side like a selvedge. */
    SELVEDGE("with a selvedge"),
    /** What it is on the left, what it is made of on the right. */
    TWO_COLUMNS("in two columns");

    private final String word;

    Arrangement(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
