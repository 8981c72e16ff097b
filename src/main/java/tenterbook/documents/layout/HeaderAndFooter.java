package tenterbook.documents.layout;

import tenterbook.documents.DocumentText;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;
import tenterbook.words.Message;

/** The head of all pages but the first, and the foot of all. */
final class HeaderAndFooter {
    /** The smallest type of a head or foot, in points. */
    private static final double LEAST = 6;

    private final DocumentText text;
    private final PageStyle type;
    private final LineLayout words;
    private final int number;
    private final int pages;

    HeaderAndFooter(DocumentText text, PageStyle type, LineLayout words, int number, int pages) {
        this.text = text;
        this.type = type;
        this.words = words;
        this.number = number;
        this.pages = pages;
    }

    void head(PdfCanvas ink) {
        if (number > 1) {
            double y = type.top() - Math.max(4.5, type.top() * 0.4);
            across(ink, text.title(), text.running(), y);
        }
    }

    void foot(PdfCanvas ink) {
        String page =
                Message.of("document.page", "number", number, "pages", pages).onPaper();
        across(ink, number > 1 ? text.maker() : named(), page, type.pageHeight() - type.bottom() * 0.5);
    }

    /** On the first page the foot tells whom the document is about, as its head stands large above. */
    private String named() {
        return text.running();
    }

    private void across(PdfCanvas ink, String left, String right, double baseline) {
        TextLine end = fitting(right, type.measure() * 0.62);
        double width = Mm.of(end.width());
        TextLine start = fitting(left, type.measure() - width - 4);
        ink.artifact(() -> {
            ink.text(start, type.left(), baseline, PageStyle.QUIET);
            ink.text(end, type.left() + type.measure() - width, baseline, PageStyle.QUIET);
        });
    }

    /**
     * One line, smaller where it is long, and at last without its end, which is marked: all of it stands at the head of the first
     * page.
     */
    private TextLine fitting(String text, double widthMm) {
        double width = Mm.points(widthMm);
        TextStyle style = type.foot();
        TextLine line = words.line(text, style);
        double least = Math.min(style.size(), LEAST);
        if (line.width() > width) {
            double size = Math.max(least, style.size() * width / line.width());
            style = TextStyle.of(style.face(), size, style.leading(), size);
            line = words.line(text, style);
        }
        for (int end = text.length(); line.width() > width && end > 0; ) {
            end = text.offsetByCodePoints(end, -1);
            line = words.line(text.substring(0, end).stripTrailing() + "…", style);
        }
        return line;
    }
}
