package tenterbook.documents;

import tenterbook.labelling.rule.CodedChoice;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** The paper of a document, upright. */
public enum PageSize implements CodedChoice, Worded {
    A4("a4", 210, 297),
    /** 8.5 by 11 inches. */
    LETTER("letter", 215.9, 279.4),
    A5("a5", 148, 210),
    A6("a6", 105, 148),
    CARD("card", 100, 150);

    private final String code;
    private final double widthMm;
    private final double heightMm;

    PageSize(String code, double widthMm, double heightMm) {
        this.code = code;
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
    public Message word() {
        return Message.of("document.page-size." + code);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
