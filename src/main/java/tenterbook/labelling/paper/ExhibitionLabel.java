package tenterbook.labelling.paper;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.LabelText.Part;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.TextColumn;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;

/** The label on a gallery wall, to be read from a step away: the title is never under 18 points, other text never under 11. */
final class ExhibitionLabel implements LabelDrawing {
    private static final double MARGIN = 13;

    private static final TextStyle MAKER =
            TextStyle.of(Typeface.SMALL_CAPS, 15, 18, 12).tracked(0.07);
    private static final TextStyle TITLE =
            TextStyle.of(Typeface.TITLE_ITALIC, 30, 36, 18).even();
    private static final TextStyle OTHER = TextStyle.of(Typeface.TITLE, 17, 24, 12);
    private static final TextStyle FACTS = TextStyle.of(Typeface.TEXT, 13, 18, 11);
    private static final TextStyle FOOT = TextStyle.of(Typeface.TEXT, 11, 12, 11);

    private static final double GUTTER = 10;

    /** A longer line is hard to follow while standing. */
    private static final double LONGEST_LINE = 130;

    @Override
    public void draw(LabelText text, PdfCanvas ink) {
        double width = text.request().format().widthMm();
        double height = text.request().format().heightMm();
        double measure = width - 2 * MARGIN;
        String where = Stream.concat(text.of(Part.PLACE).stream(), text.of(Part.NUMBER).stream())
                .collect(Collectors.joining("  ·  "));
        TextColumn.SetColumn foot = new TextColumn(LabelDrawing.what(text, "foot"))
                .add(where, FOOT, 0)
                .set(ink.setter(), measure, 12);
        double footAt = height - MARGIN + 2 - Mm.of(foot.height());
        double room = footAt - MARGIN - 2;
        if (text.request().format().arrangement() == Arrangement.TWO_COLUMNS) {
            double first = Math.round((measure - GUTTER) * 0.52);
            TextColumn.SetColumn name = named(new TextColumn(LabelDrawing.what(text, "title")), text)
                    .set(ink.setter(), first, room);
            double second = measure - GUTTER - first;
            TextColumn.SetColumn facts =
                    facts(new TextColumn(LabelDrawing.what(text, "text")), text).set(ink.setter(), second, room);
            double left = MARGIN + first + GUTTER;
            ink.column(name, MARGIN, MARGIN - 2, LabelDrawing.tone(TEXT, text));
            ink.line(left - GUTTER / 2, MARGIN, left - GUTTER / 2, footAt - 4, HAIRLINE, LabelDrawing.tone(HAIR, text));
            ink.column(facts, left, MARGIN - 2, LabelDrawing.tone(TEXT, text));
        } else {
            TextColumn.SetColumn body = facts(named(new TextColumn(LabelDrawing.what(text, "text")), text), text)
                    .set(ink.setter(), Math.min(measure, LONGEST_LINE), room);
            ink.column(body, MARGIN, MARGIN - 2, LabelDrawing.tone(TEXT, text));
        }
        ink.column(foot, MARGIN, footAt, LabelDrawing.tone(QUIET, text));
    }

    private static TextColumn named(TextColumn column, LabelText text) {
        return column.addAll(text.of(Part.MAKER), MAKER, 0)
                .addAll(text.of(Part.TITLE), TITLE, 6)
                .addAll(text.of(Part.OTHER_TITLE), OTHER, 0)
                .addAll(text.of(Part.DATE), FACTS, 0);
    }

    private static TextColumn facts(TextColumn column, LabelText text) {
        return column.addAll(text.of(Part.MATERIAL), FACTS, 9)
                .addAll(text.of(Part.SIZE), FACTS, 0)
                .addAll(text.of(Part.MADE), FACTS.running(), 9);
    }
}
