package tenterbook.piece.condition;

/** What an examiner found of a thing that an earlier examination had seen. */
public enum Standing {
    STILL_THERE("still there"),
    WORSE("worse"),
    BETTER("better"),
    GONE("gone"),
    NOT_CHECKED("not checked");

    private final String word;

    Standing(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
