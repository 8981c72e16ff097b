package tenterbook.label.paper;

import java.util.List;
import tenterbook.label.LabelText;
import tenterbook.label.LabelText.Part;
import tenterbook.label.layout.Column;
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

    private static final Style MAKER = Style.of(Face.SMALL_CAPS, 9, 12, 7.5).tracked(0.09);
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
        ink.circle(width / 2, HOLE_DOWN, HOLE_RADIUS, HAIRLINE, hair);

        Column.SetColumn head = new Column(LabelDrawing.what(text, "title"))
                .addAll(text.of(Part.MAKER), MAKER, 0)
                .addAll(text.of(Part.PLACE), PLACE, 0)
                .addAll(text.of(Part.TITLE), TITLE, 6)
                .addAll(text.of(Part.OTHER_TITLE), OTHER, 0)
                .set(ink.setter(), measure, height * 0.42);
        ink.column(head, MARGIN, HEAD, LabelDrawing.tone(TEXT, text));
        double y = HEAD + Mm.of(head.height()) + 1;
        y = numberAndPrice(text, ink, y, measure);
        ink.line(MARGIN, y + 1, width - MARGIN, y + 1, HAIRLINE, hair);

        ColourBand band = new ColourBand(text);
        double foot = height - MARGIN - Math.max(CODE, band.leastHeight());
        double room = foot - 2 - (y + 2);
        Column.SetColumn body = new Column(LabelDrawing.what(text, "text"))
                .addAll(text.of(Part.MATERIAL), REQUIRED, 0)
                .addAll(text.of(Part.CONTENT), REQUIRED, 0)
                .addAll(text.of(Part.ORIGIN), REQUIRED, 0)
                .addAll(text.of(Part.SIZE), BODY, 0)
                .add(String.join(" ", text.of(Part.MADE)), BODY, 3)
                .add(String.join(" ", text.of(Part.CARE)), BODY, 3)
                .set(ink.setter(), measure, room);
        ink.column(body, MARGIN, y + 2, LabelDrawing.tone(TEXT, text));
        foot(text, ink, band, foot);
    }

    private double numberAndPrice(LabelText text, Ink ink, double y, double measure) {
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
        return y + Mm.of(NUMBER.leading());
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
