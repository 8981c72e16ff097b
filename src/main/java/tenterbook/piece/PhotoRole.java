package tenterbook.piece;

/** What a photograph shows of a piece. */
public enum PhotoRole {
    FRONT("front"),
    BACK("back"),
    DETAIL("detail"),
    LAYER("layer"),
    FAULT("fault"),
    IN_PLACE("in place"),
    WORK("at work"),
    PAPER("paper"),
    OTHER("other");

    private final String word;

    PhotoRole(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
