package tenterbook.label;

/** The paper a label is printed on. */
public enum SheetSize {
    /** A page of its own, a little larger than the label. */
    SINGLE("single label", 0, 0),
    A4("A4", 210, 297),
    /** 8.5 by 11 inches. */
    LETTER("US Letter", 215.9, 279.4);

    private final String word;
    private final double widthMm;
    private final double heightMm;

    SheetSize(String word, double widthMm, double heightMm) {
        this.word = word;
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    /** The shorter side, in millimetres; 0 for a page made to the label. */
    public double widthMm() {
        return widthMm;
    }

    /** The longer side, in millimetres; 0 for a page made to the label. */
    public double heightMm() {
        return heightMm;
    }

    @Override
    public String toString() {
        return word;
    }
}
