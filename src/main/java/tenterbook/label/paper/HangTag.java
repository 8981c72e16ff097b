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
import tenterbook.label.layout.Setter;
import tenterbook.label.layout.Style;
import tenterbook.label.layout.Tone;

/**
 * The tag tied to a piece: a hole at the head, maker and title, the number, what it is and how it was made, and at the foot the
 * piece's measured colours beside a square code. All leading is a multiple of three points.
 */
final class HangTag implements LabelDrawing {
    private static final double MARGIN = 5.5;
    private static final double HOLE_DOWN = 6;
    private static final double HOLE_RADIUS = 2;
    private static final double HEAD = 11;
    private static final double CODE = 14;

    private static final Style MAKER = Style.of(Face.SMALL_CAPS, 9, 12, 7.5).tracked(0.07);
    private static final Style PLACE = Style.of(Face.TITLE_ITALIC, 7.5, 9, 6.5);
    private static final Style TITLE = Style.of(Face.TITLE, 18, 21, 12).even();
    private static final Style OTHER = Style.of(Face.TITLE_ITALIC, 10, 12, 8);
    private static final Style NUMBER = Style.of(Face.TEXT_MEDIUM, 7.5, 9, 6.5).tracked(0.04);
    private static final Style PRICE = Style.of(Face.TITLE, 11, 12, 9);
    private static final Style REQUIRED = Style.of(Face.TEXT_MEDIUM, 7.5, 9, 6.5);
    private static final Style BODY = Style.of(Face.TEXT, 7.2, 9, 6);

    @Override
    public void draw(LabelText text, Ink ink) {
        double width = text.request().widthMm();
        double height = text.request().heightMm();
        double measure = width - 2 * MARGIN;
        Tone hair = LabelDrawing.tone(HAIR, text);
        ColourBand band = new ColourBand(text);
        double foot = height - MARGIN - Math.max(CODE, band.leastHeight());

        Column.SetColumn head = head(text, ink, measure, height * 0.42);
        Column.SetColumn body = null;
        while (body == null) {
            try {
                body = body(text, ink, measure, foot - 2 - bodyTop(head));
            } catch (DoesNotFit full) {
                head = lower(text, ink, measure, head, full);
            }
        }
        ink.circle(width / 2, HOLE_DOWN, HOLE_RADIUS, HAIRLINE, hair);
        ink.column(head, MARGIN, HEAD, LabelDrawing.tone(TEXT, text));
        numberAndPrice(text, ink, numberTop(head), measure);
        double rule = bodyTop(head) - 1;
        ink.line(MARGIN, rule, width - MARGIN, rule, HAIRLINE, hair);
        ink.column(body, MARGIN, bodyTop(head), LabelDrawing.tone(TEXT, text));
        foot(text, ink, band, foot);
    }

    private static double numberTop(Column.SetColumn head) {
        return HEAD + Mm.of(head.height()) + 1;
    }

    private static double bodyTop(Column.SetColumn head) {
        return numberTop(head) + Mm.of(NUMBER.leading()) + 2;
    }

    private static Column.SetColumn head(LabelText text, Ink ink, double measure, double height) {
        return new Column(LabelDrawing.what(text, "title"))
                .addAll(text.of(Part.MAKER), MAKER, 0)
                .addAll(text.of(Part.PLACE), PLACE, 0)
                .addAll(text.of(Part.TITLE), TITLE, 6)
                .addAll(text.of(Part.OTHER_TITLE), OTHER, 0)
                .set(ink.setter(), measure, height);
    }

    /** A long title gives way to the text below it, as far as its smallest size. */
    private static Column.SetColumn lower(
            LabelText text, Ink ink, double measure, Column.SetColumn head, DoesNotFit full) {
        try {
            return head(text, ink, measure, Mm.of(head.height()) - 0.5);
        } catch (DoesNotFit least) {
            throw full;
        }
    }

    private static Column.SetColumn body(LabelText text, Ink ink, double measure, double room) {
        return new Column(LabelDrawing.what(text, "text"))
                .addAll(text.of(Part.MATERIAL), REQUIRED, 0)
                .addAll(LabelDrawing.bound(text, Part.CONTENT), REQUIRED, 0)
                .addAll(text.of(Part.ORIGIN), REQUIRED, 0)
                .addAll(text.of(Part.PARTICULARS), BODY, 0)
                .addAll(text.of(Part.SIZE), BODY, 0)
                .add(String.join(" ", text.of(Part.MADE)), BODY, 3)
                .add(String.join(" ", text.of(Part.CARE)), BODY, 3)
                .set(ink.setter(), measure, room);
    }

    private void numberAndPrice(LabelText text, Ink ink, double y, double measure) {
        Setter setter = ink.setter();
        double baseline = y + Mm.of(NUMBER.leading()) - 0.6;
        List<String> price = text.of(Part.PRICE);
        double priceWidth = 0;
        if (!price.isEmpty()) {
            Line line = setter.line(price.get(0), PRICE);
            priceWidth = Mm.of(line.width());
            ink.text(line, MARGIN + measure - priceWidth, baseline, LabelDrawing.tone(TEXT, text));
        }
        Column.SetColumn number = new Column(LabelDrawing.what(text, "number"))
                .addAll(text.of(Part.NUMBER), NUMBER, 0)
                .set(setter, measure - priceWidth - 2, Mm.of(NUMBER.leading()));
        ink.text(number.lines().get(0).line(), MARGIN, baseline, LabelDrawing.tone(QUIET, text));
    }

    private void foot(LabelText text, Ink ink, ColourBand band, double foot) {
        double width = text.request().widthMm();
        double height = text.request().heightMm();
        double bandWidth = width - 2 * MARGIN;
        if (!text.code().isEmpty()) {
            SquareCode code = new SquareCode(text.code());
            code.draw(ink, width - MARGIN - CODE, height - MARGIN - CODE, CODE);
            bandWidth -= CODE + code.quietMm(CODE);
        }
        if (!text.colours().isEmpty()) {
            band.draw(ink, MARGIN, foot, bandWidth, height - MARGIN - foot);
        }
    }
}
