package tenterbook.documents.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import tenterbook.typeset.DoesNotFit;
import tenterbook.typeset.LineBreaker;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.TextColumn;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;
import tenterbook.words.Message;

/** Text set in lines of one width. A word wider than a line is broken where the line ends, since it cannot be set otherwise. */
final class LineLayout {
    private static final double NO_END = 1e7;
    private static final int MOST_LOOKED_AT = 2000;

    private final LineBreaker setter;

    LineLayout(LineBreaker setter) {
        this.setter = setter;
    }

    /** Lines of one style, with where each stands. */
    record Set(List<TextLine> lines, TextStyle style) {
        double height() {
            return lines.size() * Mm.of(style.leading());
        }

        boolean empty() {
            return lines.isEmpty();
        }

        /** Draws all lines; their top at {@code y}. */
        void draw(PdfCanvas ink, double x, double y, PrintColour tone) {
            for (int i = 0; i < lines.size(); i++) {
                line(ink, i, x, y + i * Mm.of(style.leading()), tone);
            }
        }

        /** Draws all lines flush right at {@code x}. */
        void drawToRight(PdfCanvas ink, double x, double y, PrintColour tone) {
            for (int i = 0; i < lines.size(); i++) {
                line(ink, i, x - Mm.of(lines.get(i).width()), y + i * Mm.of(style.leading()), tone);
            }
        }

        void line(PdfCanvas ink, int i, double x, double y, PrintColour tone) {
            ink.text(lines.get(i), x, y + baseline(), tone);
        }

        /** From the top of a line's leading. */
        double baseline() {
            return Mm.of(style.leading() - (style.leading() - style.size() * 0.7) / 2);
        }
    }

    Set set(String text, TextStyle style, double widthMm) {
        List<TextLine> lines = new ArrayList<>();
        try {
            wrap(text, style, widthMm, lines::add);
        } catch (DoesNotFit tooWide) {
            lines.clear();
            for (String stretch : broken(text, style, widthMm)) {
                wrap(stretch, style, widthMm, lines::add);
            }
        }
        return new Set(List.copyOf(lines), style);
    }

    /** On one line, whatever its width. */
    TextLine line(String text, TextStyle style) {
        return setter.line(text, style);
    }

    private void wrap(String text, TextStyle style, double widthMm, Consumer<TextLine> lines) {
        new TextColumn(Message.of("layout.quoted", "text", text))
                .add(text, style, 0)
                .set(setter, widthMm, NO_END)
                .lines()
                .forEach(placed -> lines.accept(placed.line()));
    }

    /** The text in stretches that can each be wrapped: words too wide are cut where a line is full. */
    private List<String> broken(String text, TextStyle style, double widthMm) {
        double width = Mm.points(widthMm);
        List<String> stretches = new ArrayList<>();
        StringBuilder open = new StringBuilder();
        for (String word : text.split("[\\s&&[^\u00a0]]+")) {
            String rest = word;
            while (rest.length() > MOST_LOOKED_AT || setter.line(rest, style).width() > width) {
                int fits = fitting(beginning(rest), style, width);
                stretches.add(open.append(open.length() == 0 ? "" : " ")
                        .append(rest, 0, fits)
                        .toString());
                open.setLength(0);
                rest = rest.substring(fits);
            }
            open.append(open.length() == 0 ? "" : " ").append(rest);
        }
        stretches.add(open.toString());
        return stretches;
    }

    /** No line holds more; measuring all of a very long word for each of its lines would take its length squared. */
    private static String beginning(String word) {
        int end = Math.min(word.length(), MOST_LOOKED_AT);
        return word.substring(0, end - (end < word.length() && Character.isLowSurrogate(word.charAt(end)) ? 1 : 0));
    }

    /** How much of a word's beginning has room, at least one letter; a pair of code units is not parted. */
    private int fitting(String word, TextStyle style, double width) {
        int end = word.offsetByCodePoints(0, 1);
        while (end < word.length()) {
            int next = word.offsetByCodePoints(end, 1);
            if (setter.line(word.substring(0, next), style).width() > width) {
                break;
            }
            end = next;
        }
        return end;
    }
}
