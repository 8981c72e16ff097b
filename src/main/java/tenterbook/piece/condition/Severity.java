package tenterbook.piece.condition;

/** How bad one thing is. */
public enum Severity {
    SLIGHT("slight"),
    MODERATE("moderate"),
    SEVERE("severe");

    private final String word;

    Severity(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
