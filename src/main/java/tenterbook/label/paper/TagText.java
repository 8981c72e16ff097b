package tenterbook.label.paper;

import java.util.List;
import tenterbook.label.LabelText;
import tenterbook.label.LabelText.Part;
import tenterbook.label.layout.Column;
import tenterbook.label.layout.DoesNotFit;
import tenterbook.label.layout.Face;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Line;
import tenterbook.label.layout.Mm;
import tenterbook.label.layout.Style;
import tenterbook.label.layout.Tone;

/**
 * The words of a hang tag, in the same sizes however the tag is arranged: maker and title above, number and price on a line of
 * their own, the text below. All leading is a multiple of three points.
 */
final class TagText {
    private static final Style MAKER = Style.of(Face.SMALL_CAPS, 9, 12, 7.5).tracked(0.07);
    private static final Style PLACE = Style.of(Face.TITLE_ITALIC, 7.5, 9, 6.5);
    private static final Style TITLE = Style.of(Face.TITLE, 18, 21, 12).even();
    private static final Style OTHER = Style.of(Face.TITLE_ITALIC, 10, 12, 8);
    private static final Style NUMBER = Style.of(Face.TEXT_MEDIUM, 7.5, 9, 6.5).tracked(0.04);
    private static final Style PRICE = Style.of(Face.TITLE, 11, 12, 9);
    private static final Style REQUIRED = Style.of(Face.TEXT_MEDIUM, 7.5, 9, 6.5);
    private static final Style SIZE = Style.of(Face.TEXT, 7.2, 9, 6);
    private static final Style BODY = SIZE.running();

    private final LabelText text;
    private final Ink ink;
    private final double left;
    private final double measure;

    TagText(LabelText text, Ink ink, double left, double measure) {
        this.text = text;
        this.ink = ink;
        this.left = left;
        this.measure = measure;
    }

    /** Title and text as they share a height. */
    record Both(Column.SetColumn head, Column.SetColumn body) {
        double headMm() {
            return Mm.of(head.height());
        }

        double bodyMm() {
            return Mm.of(body.height());
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
        Column.SetColumn head = head(headMost);
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

    private Column.SetColumn head(double height) {
        return new Column(LabelDrawing.what(text, "title"))
                .addAll(text.of(Part.MAKER), MAKER, 0)
                .addAll(text.of(Part.PLACE), PLACE, 0)
                .addAll(text.of(Part.TITLE), TITLE, 6)
                .addAll(text.of(Part.OTHER_TITLE), OTHER, 0)
                .set(ink.setter(), measure, height);
    }

    private Column.SetColumn body(double room) {
        return new Column(LabelDrawing.what(text, "text"))
                .addAll(text.of(Part.MATERIAL), REQUIRED, 0)
                .addAll(LabelDrawing.bound(text, Part.CONTENT), REQUIRED, 0)
                .addAll(text.of(Part.ORIGIN), REQUIRED, 0)
                .addAll(text.of(Part.PARTICULARS), SIZE, 0)
                .addAll(text.of(Part.SIZE), SIZE, 0)
                .add(String.join(" ", text.of(Part.MADE)), BODY, 3)
                .add(String.join(" ", text.of(Part.CARE)), BODY, 3)
                .set(ink.setter(), measure, room);
    }

    void column(Column.SetColumn column, double y) {
        ink.column(column, left, y, LabelDrawing.tone(LabelDrawing.TEXT, text));
    }

    /** Number on the left and price on the right; {@code y} is where {@link #numberLine} begins. */
    void numberAndPrice(double y) {
        double baseline = y + 1 + Mm.of(NUMBER.leading()) - 0.6;
        List<String> price = text.of(Part.PRICE);
        double priceWidth = 0;
        if (!price.isEmpty()) {
            Line line = ink.setter().line(price.get(0), PRICE);
            priceWidth = Mm.of(line.width());
            ink.text(line, left + measure - priceWidth, baseline, LabelDrawing.tone(LabelDrawing.TEXT, text));
        }
        Column.SetColumn number = new Column(LabelDrawing.what(text, "number"))
                .addAll(text.of(Part.NUMBER), NUMBER, 0)
                .set(ink.setter(), measure - priceWidth - 2, Mm.of(NUMBER.leading()));
        // A paper from before may have been kept without a line for its number.
        number.lines().stream()
                .limit(1)
                .forEach(line -> ink.text(line.line(), left, baseline, LabelDrawing.tone(LabelDrawing.QUIET, text)));
    }

    void rule(double y) {
        Tone hair = LabelDrawing.tone(LabelDrawing.HAIR, text);
        ink.line(left, y, left + measure, y, LabelDrawing.HAIRLINE, hair);
    }
}
