package tenterbook.piece.condition;

/** The state of the whole piece, in four plain steps; common practice, no step of a standard. */
public enum Overall {
    GOOD("good"),
    FAIR("fair"),
    POOR("poor"),
    FAILING("failing");

    private final String word;

    Overall(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
