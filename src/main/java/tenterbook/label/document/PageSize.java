package tenterbook.label.document;

import tenterbook.label.Coded;

/** The paper of a document, upright. */
public enum PageSize implements Coded {
    A4("a4", "A4", 210, 297),
    /** 8.5 by 11 inches. */
    LETTER("letter", "US Letter", 215.9, 279.4),
    A5("a5", "A5", 148, 210),
    A6("a6", "A6", 105, 148),
    CARD("card", "card, 100 × 150 mm", 100, 150);

    private final String code;
    private final String word;
    private final double widthMm;
    private final double heightMm;

    PageSize(String code, String word, double widthMm, double heightMm) {
        this.code = code;
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
    public String code() {
        return code;
    }

    @Override
    public String toString() {
        return word;
    }
}
