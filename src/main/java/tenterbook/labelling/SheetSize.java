package tenterbook.labelling;

import tenterbook.labelling.rule.CodedChoice;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** The paper a label is printed on. */
public enum SheetSize implements CodedChoice, Worded {
    /** A page of its own, a little larger than the label. */
    SINGLE("single", 0, 0),
    A4("a4", 210, 297),
    /** 8.5 by 11 inches. */
    LETTER("letter", 215.9, 279.4),
    /** A roll of a printer that cuts after each label; as wide as {@link PrintSettings.Placement#rollMm}. */
    ROLL("roll", 0, 0),
    /** A stored sheet of labels, {@link PrintSettings.Placement#own}. */
    OWN("own", 0, 0);

    private final String code;
    private final double widthMm;
    private final double heightMm;

    SheetSize(String code, double widthMm, double heightMm) {
        this.code = code;
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    /** The shorter side, in millimetres; 0 where the label or the kept sheet decides. */
    public double widthMm() {
        return widthMm;
    }

    /** The longer side, in millimetres; 0 where the label or the kept sheet decides. */
    public double heightMm() {
        return heightMm;
    }

    @Override
    public String code() {
        return code;
    }

    @Override
    public Message word() {
        return Message.of("label.sheet." + code);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
