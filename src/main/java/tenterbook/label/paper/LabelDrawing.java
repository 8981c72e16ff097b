package tenterbook.label.paper;

import tenterbook.label.LabelText;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Tone;

/** The design of one kind of label. */
interface LabelDrawing {
    Tone TEXT = new Tone(28, 26, 24);
    Tone QUIET = new Tone(92, 86, 80);
    Tone HAIR = new Tone(150, 143, 134);
    double HAIRLINE = 0.35;

    /** Draws within the label's box, whose upper left corner is the origin of {@code ink}. */
    void draw(LabelText text, Ink ink);

    static LabelDrawing of(LabelText text) {
        return switch (text.request().kind()) {
            case HANG_TAG -> new HangTag();
            case CARE_LABEL -> new CareLabel();
            case EXHIBITION_LABEL -> new ExhibitionLabel();
        };
    }

    static Tone tone(Tone wanted, LabelText text) {
        return text.request().blackOnly() ? Tone.BLACK : wanted;
    }

    static String what(LabelText text, String part) {
        return "Piece %s: the %s of the %s"
                .formatted(text.number(), part, text.request().kind());
    }
}
