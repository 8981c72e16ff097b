package tenterbook.label.paper;

import java.util.List;
import tenterbook.label.LabelText;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Tone;
import tenterbook.words.Message;

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
            case SHELF_TAG, TUBE_TAG -> new StoreTag();
        };
    }

    static Tone tone(Tone wanted, LabelText text) {
        return text.request().finish().blackOnly() ? Tone.BLACK : wanted;
    }

    /** Required lines of one part, in which a share never parts from its fibre at a line's end. */
    static List<String> bound(LabelText text, LabelText.Part part) {
        return text.of(part).stream()
                .map(line -> line.replaceAll("(?<=%|\\d|Other|other|true) (?=%|\\p{L})", "\u00a0"))
                .toList();
    }

    static Message what(LabelText text, String part) {
        return Message.of(
                "label.part",
                "piece",
                text.number(),
                "part",
                part,
                "kind",
                text.request().kind());
    }
}
