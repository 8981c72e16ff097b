package tenterbook.label.document;

import java.util.Locale;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** The paper of a document, upright. */
public enum PageSize implements Worded {
    A4(210, 297),
    /** 8.5 by 11 inches. */
    LETTER(215.9, 279.4),
    A5(148, 210),
    A6(105, 148),
    CARD(100, 150);

    private final double widthMm;
    private final double heightMm;

    PageSize(double widthMm, double heightMm) {
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
    public Message word() {
        return Message.of("document.page-size." + name().toLowerCase(Locale.ROOT));
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
