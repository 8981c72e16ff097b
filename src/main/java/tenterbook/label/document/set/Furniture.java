package tenterbook.label.document.set;

import tenterbook.label.document.DocumentText;
import tenterbook.label.layout.Column;
import tenterbook.label.layout.Face;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Line;
import tenterbook.label.layout.Mm;
import tenterbook.label.layout.Style;

/** The head of all pages but the first, and the foot of all. */
final class Furniture {
    private final DocumentText text;
    private final Type type;
    private final Words words;
    private final int number;
    private final int pages;

    Furniture(DocumentText text, Type type, Words words, int number, int pages) {
        this.text = text;
        this.type = type;
        this.words = words;
        this.number = number;
        this.pages = pages;
    }

    void head(Ink ink) {
        if (number > 1) {
            double y = type.top() - Math.max(4.5, type.top() * 0.4);
            across(ink, text.title(), text.running(), y);
        }
    }

    void foot(Ink ink) {
        String page = "page\u00a0" + number + " of\u00a0" + pages;
        across(ink, number > 1 ? text.maker() : named(), page, type.pageHeight() - type.bottom() * 0.5);
    }

    /** On the first page the foot tells whom the document is about, as its head stands large above. */
    private String named() {
        return text.running();
    }

    private void across(Ink ink, String left, String right, double baseline) {
        Style style = type.foot();
        Line end = words.line(right, shrinking(right, style, type.measure() * 0.62, ink));
        double width = Mm.of(end.width());
        ink.artifact(() -> {
            if (!left.isBlank()) {
                double room = type.measure() - width - 4;
                ink.text(words.line(left, shrinking(left, style, room, ink)), type.left(), baseline, Type.QUIET);
            }
            ink.text(end, type.left() + type.measure() - width, baseline, Type.QUIET);
        });
    }

    /** The style in which the text has room on one line. */
    private Style shrinking(String line, Style style, double width, Ink ink) {
        if (line.isBlank()) {
            return style;
        }
        Style least = Style.of(Face.TEXT, style.size(), style.leading(), Math.min(style.size(), 5.5));
        return new Column("The head or foot of the page")
                .add(line, least, 0)
                .set(ink.setter(), width, Mm.of(style.leading() * 1.001))
                .lines()
                .get(0)
                .line()
                .style();
    }
}
