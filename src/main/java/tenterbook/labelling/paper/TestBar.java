package tenterbook.labelling.paper;

import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;
import tenterbook.words.Message;

/** A bar to lay a ruler on, since many a print dialogue shrinks a page to fit. */
final class TestBar {
    static final double LENGTH = 50;
    static final double HEIGHT = 7;
    static final String WORDS = Message.of("label.test-bar").inEnglish();

    private static final TextStyle STYLE = TextStyle.of(Typeface.TEXT, 6.8, 8, 6.8);

    private TestBar() {}

    /** @param middle of the bar from the left; {@code top} of its ticks from above, both in mm */
    static void draw(PdfCanvas ink, double middle, double top) {
        double left = middle - LENGTH / 2;
        double base = top + 3;
        ink.line(left, base, left + LENGTH, base, 0.4, PrintColour.BLACK);
        for (int mm = 0; mm <= LENGTH; mm += 5) {
            double other = mm % 10 == 0 ? 2 : 1.2;
            double tick = mm % 50 == 0 ? 3 : other;
            ink.line(left + mm, base - tick, left + mm, base, 0.25, PrintColour.BLACK);
        }
        TextLine line = ink.setter().line(WORDS, STYLE);
        ink.text(line, middle - Mm.of(line.width()) / 2, base + 3.2, PrintColour.BLACK);
    }
}
