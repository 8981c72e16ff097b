package tenterbook.label.document;

/** The paper of a document, upright. */
public enum PageSize {
    A4("A4", 210, 297),
    /** 8.5 by 11 inches. */
    LETTER("US Letter", 215.9, 279.4),
    A5("A5", 148, 210),
    A6("A6", 105, 148),
    CARD("card, 100 × 150 mm", 100, 150);

    private final String word;
    private final double widthMm;
    private final double heightMm;

    PageSize(String word, double widthMm, double heightMm) {
        this.word = word;
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    public double widthMm() {
        return widthMm;
    }

    public double heightMm() {
        return heightMm;
    }

    @Override
    public String toString() {
        return word;
    }
}
