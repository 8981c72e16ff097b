package tenterbook.labelling.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.labelling.Arrangement;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.LabelText.Part;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.TextColumn;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;
import tenterbook.words.Message;

/**
 * Materials, making, condition and advice of a piece, as a tag or for a wall. Each of the four has a heading above it, or beside
 * it in rows; in two columns the materials and the making stand on the left.
 */
final class ConditionLabel implements LabelDrawing {
    /** Type and margins of one size. */
    private record Size(
            double margin,
            double gutter,
            TextStyle maker,
            TextStyle title,
            TextStyle other,
            TextStyle heading,
            TextStyle required,
            TextStyle text) {}

    private static final Size TAG = new Size(
            6,
            4,
            TextStyle.of(Typeface.SMALL_CAPS, 9, 12, 7.5).tracked(0.07),
            TextStyle.of(Typeface.TITLE, 18, 21, 12).even(),
            TextStyle.of(Typeface.TITLE_ITALIC, 10, 12, 8),
            TextStyle.of(Typeface.SMALL_CAPS, 8, 10.5, 7).tracked(0.07),
            TextStyle.of(Typeface.TEXT_MEDIUM, 7.5, 9.5, 6.5),
            TextStyle.of(Typeface.TEXT, 7.5, 9.5, 6.2));

    private static final Size WALL = new Size(
            13,
            10,
            TextStyle.of(Typeface.SMALL_CAPS, 15, 18, 12).tracked(0.07),
            TextStyle.of(Typeface.TITLE_ITALIC, 30, 36, 18).even(),
            TextStyle.of(Typeface.TITLE, 17, 24, 12),
            TextStyle.of(Typeface.SMALL_CAPS, 11.5, 14, 8.5).tracked(0.07),
            TextStyle.of(Typeface.TEXT_MEDIUM, 12, 15.5, 8.5),
            TextStyle.of(Typeface.TEXT, 12, 15.5, 8.5));

    private static final double HOLE_DOWN = 6;
    private static final double HOLE_RADIUS = 2;
    private static final double BELOW_HOLE = 11;

    @Override
    public void draw(LabelText text, PdfCanvas ink) {
        Size size = text.request().kind() == LabelKind.CONDITION_TAG ? TAG : WALL;
        double width = text.request().format().widthMm();
        double height = text.request().format().heightMm();
        boolean tied = text.request().kind().tied() && text.request().finish().holeMark();
        if (tied) {
            ink.circle(width / 2, HOLE_DOWN, HOLE_RADIUS, HAIRLINE, LabelDrawing.tone(HAIR, text));
        }
        double top = tied ? BELOW_HOLE : size.margin;
        double measure = width - 2 * size.margin;
        TextColumn.SetColumn head = new TextColumn(LabelDrawing.what(text, "title"))
                .addAll(text.of(Part.MAKER), size.maker, 0)
                .addAll(text.of(Part.PLACE), size.text, 0)
                .addAll(text.of(Part.TITLE), size.title, 4)
                .addAll(text.of(Part.OTHER_TITLE), size.other, 0)
                .add(String.join("  ·  ", concat(text.of(Part.NUMBER), text.of(Part.SIZE))), size.text, 2)
                .set(ink.setter(), measure, height * 0.4);
        ink.column(head, size.margin, top, LabelDrawing.tone(TEXT, text));
        double rule = top + Mm.of(head.height()) + size.gutter / 2;
        ink.line(size.margin, rule, width - size.margin, rule, HAIRLINE, LabelDrawing.tone(HAIR, text));
        double body = rule + size.gutter / 2;
        Room room = new Room(size, body, measure, height - size.margin - body);
        Arrangement arrangement = text.request().format().arrangement();
        if (arrangement == Arrangement.TWO_COLUMNS) {
            twoColumns(text, ink, room);
        } else if (arrangement == Arrangement.ROWS) {
            rows(text, ink, room);
        } else {
            TextColumn.SetColumn all =
                    column(text, size, List.copyOf(parts(text).keySet())).set(ink.setter(), measure, room.height);
            ink.column(all, size.margin, body, LabelDrawing.tone(TEXT, text));
        }
    }

    /** Below the head, in mm. */
    private record Room(Size size, double top, double measure, double height) {}

    private static void twoColumns(LabelText text, PdfCanvas ink, Room room) {
        Size size = room.size;
        double half = (room.measure - size.gutter) / 2;
        double left = size.margin + half + size.gutter;
        ink.column(
                column(text, size, List.of("materials", "making")).set(ink.setter(), half, room.height),
                size.margin,
                room.top,
                LabelDrawing.tone(TEXT, text));
        ink.line(
                left - size.gutter / 2,
                room.top,
                left - size.gutter / 2,
                room.top + room.height,
                HAIRLINE,
                LabelDrawing.tone(HAIR, text));
        ink.column(
                column(text, size, List.of("condition", "advice", "words")).set(ink.setter(), half, room.height),
                left,
                room.top,
                LabelDrawing.tone(TEXT, text));
    }

    /** The headings stand on the first lines of their texts. */
    private static void rows(LabelText text, PdfCanvas ink, Room room) {
        Size size = room.size;
        double beside = Math.round(room.measure * 0.24);
        double left = size.margin + beside + size.gutter / 2;
        TextColumn column = new TextColumn(LabelDrawing.what(text, "text"));
        Map<Integer, String> headings = new LinkedHashMap<>();
        parts(text).forEach((part, lines) -> {
            headings.put(column.paragraphs(), part);
            add(column, size, lines);
        });
        TextColumn.SetColumn set = column.set(ink.setter(), room.measure - beside - size.gutter / 2, room.height);
        ink.column(set, left, room.top, LabelDrawing.tone(TEXT, text));
        int last = -1;
        for (TextColumn.Placed line : set.lines()) {
            String part = line.paragraph() == last ? null : headings.get(line.paragraph());
            if (part != null && !part.equals("words")) {
                TextColumn.SetColumn heading = new TextColumn(LabelDrawing.what(text, "text"))
                        .add(heading(part), size.heading, 0)
                        .set(ink.setter(), beside, room.height);
                double first = Mm.of(heading.lines().get(0).baseline());
                ink.column(
                        heading,
                        size.margin,
                        room.top + Mm.of(line.baseline()) - first,
                        LabelDrawing.tone(QUIET, text));
            }
            last = line.paragraph();
        }
    }

    private static TextColumn column(LabelText text, Size size, List<String> wanted) {
        TextColumn column = new TextColumn(LabelDrawing.what(text, "text"));
        parts(text).forEach((part, lines) -> {
            if (wanted.contains(part)) {
                if (!part.equals("words")) {
                    column.add(heading(part), size.heading, size.text.leading() * 0.6);
                }
                add(column, size, lines);
            }
        });
        return column;
    }

    private static String heading(String part) {
        return Message.of("label.heading." + part).inEnglish();
    }

    /** A line of the text. */
    private record Sentence(String words, boolean required) {}

    private static void add(TextColumn column, Size size, List<Sentence> lines) {
        for (int i = 0; i < lines.size(); i++) {
            Sentence line = lines.get(i);
            column.add(
                    line.words,
                    line.required ? size.required : size.text.running(),
                    i == 0 ? size.text.leading() * 0.35 : 0);
        }
    }

    /** The parts that have words, in order; the maker's own words come last and have no heading. */
    private static Map<String, List<Sentence>> parts(LabelText text) {
        Map<String, List<Sentence>> parts = new LinkedHashMap<>();
        List<Sentence> materials = new ArrayList<>();
        text.of(Part.MATERIAL).forEach(words -> materials.add(new Sentence(words, false)));
        LabelDrawing.bound(text, Part.CONTENT).forEach(words -> materials.add(new Sentence(words, true)));
        text.of(Part.ORIGIN).forEach(words -> materials.add(new Sentence(words, true)));
        text.of(Part.DYES).forEach(words -> materials.add(new Sentence(words, false)));
        text.of(Part.PARTICULARS).forEach(words -> materials.add(new Sentence(words, false)));
        parts.put("materials", materials);
        parts.put("making", plain(text, Part.MADE));
        parts.put("condition", plain(text, Part.CONDITION));
        parts.put("advice", plain(text, Part.ADVICE));
        parts.put("words", plain(text, Part.WORDS));
        parts.values().removeIf(List::isEmpty);
        return parts;
    }

    private static List<Sentence> plain(LabelText text, Part part) {
        return text.of(part).stream().map(words -> new Sentence(words, false)).toList();
    }

    private static List<String> concat(List<String> first, List<String> second) {
        List<String> both = new ArrayList<>(first);
        both.addAll(second);
        return both;
    }
}
