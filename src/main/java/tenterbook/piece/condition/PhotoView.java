package tenterbook.piece.condition;

/** How a photograph of an examination was taken. */
public enum PhotoView {
    FRONT("front"),
    BACK("back"),
    RAKING_LIGHT("raking light"),
    LIGHT_BEHIND("light from behind"),
    DETAIL("detail"),
    EDGE("edge"),
    HANGING_DEVICE("hanging device"),
    PACKING("packing"),
    OTHER("other");

    private final String word;

    PhotoView(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
