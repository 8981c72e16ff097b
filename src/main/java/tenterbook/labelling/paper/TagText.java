package tenterbook.labelling.paper;

import java.util.List;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.LabelText.Part;
import tenterbook.typeset.DoesNotFit;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.TextColumn;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;

/**
 * The words of a hang tag, in the same sizes however the tag is arranged: maker and title above, number and price on a line of
 * their own, the text below. All leading is a multiple of three points.
 */
final class TagText {
    private static final TextStyle MAKER =
            TextStyle.of(Typeface.SMALL_CAPS, 9, 12, 7.5).tracked(0.07);
    private static final TextStyle PLACE = TextStyle.of(Typeface.TITLE_ITALIC, 7.5, 9, 6.5);
    private static final TextStyle TITLE =
            TextStyle.of(Typeface.TITLE, 18, 21, 12).even();
    private static final TextStyle OTHER = TextStyle.of(Typeface.TITLE_ITALIC, 10, 12, 8);
    private static final TextStyle NUMBER =
            TextStyle.of(Typeface.TEXT_MEDIUM, 7.5, 9, 6.5).tracked(0.04);
    private static final TextStyle PRICE = TextStyle.of(Typeface.TITLE, 11, 12, 9);
    private static final TextStyle REQUIRED = TextStyle.of(Typeface.TEXT_MEDIUM, 7.5, 9, 6.5);
    private static final TextStyle SIZE = TextStyle.of(Typeface.TEXT, 7.2, 9, 6);
    private static final TextStyle BODY = SIZE.running();

    private final LabelText text;
    private final PdfCanvas ink;
    private final double left;
    private final double measure;

    TagText(LabelText text, PdfCanvas ink, double left, double measure) {
        this.text = text;
        this.ink = ink;
        this.left = left;
        this.measure = measure;
    }

    /** Title and text as they share a height. */
    record Both(TextColumn.SetColumn head, TextColumn.SetColumn body) {
        double headMm() {
            return Mm.of(head.height());
        }
    }

    /** Height of the line of number and price with the room around it, in mm. */
    static double numberLine() {
        return 1 + Mm.of(NUMBER.leading()) + 2;
    }

    /**
     * Head and text in a height of {@code room} mm. A long title gives way to the text below it, as far as its smallest size.
     *
     * @param headMost of the room that the head may take, in mm
     */
    Both fit(double room, double headMost) {
        TextColumn.SetColumn head = head(headMost);
        while (true) {
            try {
                return new Both(head, body(room - Mm.of(head.height())));
            } catch (DoesNotFit full) {
                try {
                    head = head(Mm.of(head.height()) - 0.5);
                } catch (DoesNotFit least) {
                    throw full;
                }
            }
        }
    }

    private TextColumn.SetColumn head(double height) {
        return new TextColumn(LabelDrawing.what(text, "title"))
                .addAll(text.of(Part.MAKER), MAKER, 0)
                .addAll(text.of(Part.PLACE), PLACE, 0)
                .addAll(text.of(Part.TITLE), TITLE, 6)
                .addAll(text.of(Part.OTHER_TITLE), OTHER, 0)
                .set(ink.setter(), measure, height);
    }

    private TextColumn.SetColumn body(double room) {
        return new TextColumn(LabelDrawing.what(text, "text"))
                .addAll(text.of(Part.MATERIAL), REQUIRED, 0)
                .addAll(LabelDrawing.bound(text, Part.CONTENT), REQUIRED, 0)
                .addAll(text.of(Part.ORIGIN), REQUIRED, 0)
                .addAll(text.of(Part.PARTICULARS), SIZE, 0)
                .addAll(text.of(Part.SIZE), SIZE, 0)
                .add(String.join(" ", text.of(Part.MADE)), BODY, 3)
                .add(String.join(" ", text.of(Part.CARE)), BODY, 3)
                .set(ink.setter(), measure, room);
    }

    void column(TextColumn.SetColumn column, double y) {
        ink.column(column, left, y, LabelDrawing.tone(LabelDrawing.TEXT, text));
    }

    /** Number on the left and price on the right; {@code y} is where {@link #numberLine} begins. */
    void numberAndPrice(double y) {
        double baseline = y + 1 + Mm.of(NUMBER.leading()) - 0.6;
        List<String> price = text.of(Part.PRICE);
        double priceWidth = 0;
        if (!price.isEmpty()) {
            TextLine line = ink.setter().line(price.get(0), PRICE);
            priceWidth = Mm.of(line.width());
            ink.text(line, left + measure - priceWidth, baseline, LabelDrawing.tone(LabelDrawing.TEXT, text));
        }
        TextColumn.SetColumn number = new TextColumn(LabelDrawing.what(text, "number"))
                .addAll(text.of(Part.NUMBER), NUMBER, 0)
                .set(ink.setter(), measure - priceWidth - 2, Mm.of(NUMBER.leading()));
        // A paper from before may have been kept without a line for its number.
        number.lines().stream()
                .limit(1)
                .forEach(line -> ink.text(line.line(), left, baseline, LabelDrawing.tone(LabelDrawing.QUIET, text)));
    }

    void rule(double y) {
        PrintColour hair = LabelDrawing.tone(LabelDrawing.HAIR, text);
        ink.line(left, y, left + measure, y, LabelDrawing.HAIRLINE, hair);
    }
}
