package tenterbook.piece.condition;

/** Whether one thing is likely to grow. */
public enum Stability {
    STABLE("stable"),
    AT_RISK("may get worse"),
    ACTIVE("getting worse");

    private final String word;

    Stability(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
