package tenterbook.piece.condition;

/** How bad one thing is. */
public enum Severity {
    SLIGHT("slight"),
    MODERATE("moderate"),
    SEVERE("severe"),
    NOT_SAID("not said");

    private final String word;

    Severity(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
