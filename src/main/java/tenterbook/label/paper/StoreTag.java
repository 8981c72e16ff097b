package tenterbook.label.paper;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.label.LabelKind;
import tenterbook.label.LabelText;
import tenterbook.label.LabelText.Part;
import tenterbook.label.layout.Column;
import tenterbook.label.layout.Face;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Line;
import tenterbook.label.layout.Mm;
import tenterbook.label.layout.Style;

/**
 * A tag for the maker's own shelves, to be read at arm's length: the number largest, then the title and where it is kept. For a
 * tube everything stands in one long row.
 */
final class StoreTag implements LabelDrawing {
    private static final double MARGIN = 4;
    private static final double MOST_CODE = 18;

    private static final Style NUMBER = Style.of(Face.TEXT_BOLD, 36, 38, 18);
    private static final Style LONG_NUMBER = Style.of(Face.TEXT_BOLD, 46, 48, 24);
    private static final Style TITLE = Style.of(Face.TITLE, 15, 17, 9);
    private static final Style OTHER = Style.of(Face.TITLE, 10, 13, 7.5);
    private static final Style FACTS = Style.of(Face.TEXT, 9, 11, 7);
    private static final Style STORED = Style.of(Face.TEXT_BOLD, 13, 15, 9);

    @Override
    public void draw(LabelText text, Ink ink) {
        double width = text.request().format().widthMm();
        double height = text.request().format().heightMm();
        double side = Math.min(MOST_CODE, height - 2 * MARGIN);
        SquareCode code = new SquareCode(text.code());
        double quiet = code.quietMm(side);
        code.draw(ink, width - MARGIN - side, (height - side) / 2, side);
        double right = width - MARGIN - side - Math.max(quiet, 3);
        if (text.request().kind() == LabelKind.TUBE_TAG) {
            tube(text, ink, right, height);
        } else {
            shelf(text, ink, right, height);
        }
    }

    private static void shelf(LabelText text, Ink ink, double right, double height) {
        double measure = right - MARGIN;
        Column.SetColumn number = number(text, ink, NUMBER, measure, (height - 2 * MARGIN) * 0.4);
        double top = MARGIN + Mm.of(number.height()) + 0.5;
        Column.SetColumn body = words(text, ink, measure, height - MARGIN - top);
        ink.column(number, MARGIN, MARGIN, LabelDrawing.tone(TEXT, text));
        ink.column(body, MARGIN, top, LabelDrawing.tone(TEXT, text));
    }

    private static void tube(LabelText text, Ink ink, double right, double height) {
        double room = height - 2 * MARGIN;
        Column.SetColumn number = number(text, ink, LONG_NUMBER, (right - MARGIN) * 0.5, room);
        double wide = number.lines().stream()
                .map(Column.Placed::line)
                .mapToDouble(Line::width)
                .max()
                .orElse(0);
        double left = MARGIN + Mm.of(wide) + 6;
        Column.SetColumn body = words(text, ink, right - left, room);
        ink.column(number, MARGIN, (height - Mm.of(number.height())) / 2, LabelDrawing.tone(TEXT, text));
        ink.line(left - 3, MARGIN, left - 3, height - MARGIN, HAIRLINE, LabelDrawing.tone(HAIR, text));
        ink.column(body, left, (height - Mm.of(body.height())) / 2, LabelDrawing.tone(TEXT, text));
    }

    private static Column.SetColumn number(LabelText text, Ink ink, Style style, double width, double height) {
        return new Column(LabelDrawing.what(text, "number"))
                .addAll(text.of(Part.NUMBER), style, 0)
                .set(ink.setter(), width, height);
    }

    private static Column.SetColumn words(LabelText text, Ink ink, double width, double height) {
        String facts = Stream.concat(text.of(Part.MATERIAL).stream(), text.of(Part.SIZE).stream())
                .collect(Collectors.joining("  ·  "));
        return new Column(LabelDrawing.what(text, "text"))
                .addAll(text.of(Part.TITLE), TITLE, 0)
                .addAll(text.of(Part.OTHER_TITLE), OTHER, 0)
                .add(facts, FACTS, 1)
                .addAll(text.of(Part.STORED), STORED, 2)
                .set(ink.setter(), width, height);
    }
}
