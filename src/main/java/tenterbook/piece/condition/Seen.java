package tenterbook.piece.condition;

/** How far a part of the piece was looked at. */
public enum Seen {
    WHOLE("examined"),
    PART("in part"),
    NOT("not examined");

    private final String word;

    Seen(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
