package tenterbook.labelling.paper;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.LabelText.Part;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.TextColumn;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;

/**
 * A tag for the maker's own shelves, to be read at arm's length: the number largest, then the title and where it is kept. For a
 * tube everything is in one long row.
 */
final class StoreTag implements LabelDrawing {
    private static final double MARGIN = 4;
    private static final double MOST_CODE = 18;

    private static final TextStyle NUMBER = TextStyle.of(Typeface.TEXT_BOLD, 36, 38, 18);
    private static final TextStyle LONG_NUMBER = TextStyle.of(Typeface.TEXT_BOLD, 46, 48, 24);
    private static final TextStyle TITLE = TextStyle.of(Typeface.TITLE, 15, 17, 9);
    private static final TextStyle OTHER = TextStyle.of(Typeface.TITLE, 10, 13, 7.5);
    private static final TextStyle FACTS = TextStyle.of(Typeface.TEXT, 9, 11, 7);
    private static final TextStyle STORED = TextStyle.of(Typeface.TEXT_BOLD, 13, 15, 9);

    @Override
    public void draw(LabelText text, PdfCanvas ink) {
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

    private static void shelf(LabelText text, PdfCanvas ink, double right, double height) {
        double measure = right - MARGIN;
        TextColumn.SetColumn number = number(text, ink, NUMBER, measure, (height - 2 * MARGIN) * 0.4);
        double top = MARGIN + Mm.of(number.height()) + 0.5;
        TextColumn.SetColumn body = words(text, ink, measure, height - MARGIN - top);
        ink.column(number, MARGIN, MARGIN, LabelDrawing.tone(TEXT, text));
        ink.column(body, MARGIN, top, LabelDrawing.tone(TEXT, text));
    }

    private static void tube(LabelText text, PdfCanvas ink, double right, double height) {
        double room = height - 2 * MARGIN;
        TextColumn.SetColumn number = number(text, ink, LONG_NUMBER, (right - MARGIN) * 0.5, room);
        double wide = number.lines().stream()
                .map(TextColumn.Placed::line)
                .mapToDouble(TextLine::width)
                .max()
                .orElse(0);
        double left = MARGIN + Mm.of(wide) + 6;
        TextColumn.SetColumn body = words(text, ink, right - left, room);
        ink.column(number, MARGIN, (height - Mm.of(number.height())) / 2, LabelDrawing.tone(TEXT, text));
        ink.line(left - 3, MARGIN, left - 3, height - MARGIN, HAIRLINE, LabelDrawing.tone(HAIR, text));
        ink.column(body, left, (height - Mm.of(body.height())) / 2, LabelDrawing.tone(TEXT, text));
    }

    private static TextColumn.SetColumn number(
            LabelText text, PdfCanvas ink, TextStyle style, double width, double height) {
        return new TextColumn(LabelDrawing.what(text, "number"))
                .addAll(text.of(Part.NUMBER), style, 0)
                .set(ink.setter(), width, height);
    }

    private static TextColumn.SetColumn words(LabelText text, PdfCanvas ink, double width, double height) {
        String facts = Stream.concat(text.of(Part.MATERIAL).stream(), text.of(Part.SIZE).stream())
                .collect(Collectors.joining("  ·  "));
        return new TextColumn(LabelDrawing.what(text, "text"))
                .addAll(text.of(Part.TITLE), TITLE, 0)
                .addAll(text.of(Part.OTHER_TITLE), OTHER, 0)
                .add(facts, FACTS, 1)
                .addAll(text.of(Part.STORED), STORED, 2)
                .set(ink.setter(), width, height);
    }
}
