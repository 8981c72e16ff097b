package tenterbook.labelling.paper;

import java.util.List;
import tenterbook.labelling.LabelText;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.words.Message;

/** The design of one kind of label. */
interface LabelDrawing {
    PrintColour TEXT = new PrintColour(28, 26, 24);
    PrintColour QUIET = new PrintColour(92, 86, 80);
    PrintColour HAIR = new PrintColour(150, 143, 134);
    double HAIRLINE = 0.35;

    /** Draws within the label's box, whose upper left corner is the origin of {@code ink}. */
    void draw(LabelText text, PdfCanvas ink);

    static LabelDrawing of(LabelText text) {
        return switch (text.request().kind()) {
            case HANG_TAG -> new HangTag();
            case CARE_LABEL -> new CareLabel();
            case EXHIBITION_LABEL -> new ExhibitionLabel();
            case CONDITION_TAG, CONDITION_LABEL -> new ConditionLabel();
            case SHELF_TAG, TUBE_TAG -> new StoreTag();
        };
    }

    static PrintColour tone(PrintColour wanted, LabelText text) {
        return text.request().finish().blackOnly() ? PrintColour.BLACK : wanted;
    }

    /** Required lines of one part, in which a line never breaks between a share and its fibre. */
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
