package tenterbook.colour.card;

/** How a measured colour was corrected for light and camera. */
public enum Calibration {
    /** Not at all: the number is the picture's, not the cloth's. */
    NONE("uncalibrated"),
    GREY_CARD("one grey card"),
    WHITE_AND_BLACK("a white and a black card"),
    CHART("a chart of 24 patches");

    private final String words;

    Calibration(String words) {
        this.words = words;
    }

    /** For the page and the ledger. */
    @Override
    public String toString() {
        return words;
    }
}
