package tenterbook.piece;

/** Which part of the dyeing a colour belongs to. */
public enum ColourRole {
    GROUND("ground"),
    RESIST("resist"),
    LOCAL("local colour"),
    OTHER("other");

    private final String word;

    ColourRole(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
