package tenterbook.labelling.paper;

import tenterbook.colour.space.Srgb;
import tenterbook.facts.PieceColour;
import tenterbook.labelling.LabelText;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;

/**
 * A stretch of a piece's colour. On a one-colour printer it is an outlined hatching: the darker the colour, the closer the
 * lines, and neighbours run in different directions; the lightest are left blank.
 */
final class Swatch {
    private static final double OUTLINE = 0.5;
    private static final double HATCH = 0.6;
    private static final double CLOSEST_MM = 0.42;
    private static final double WIDEST_MM = 1.5;
    private static final double BLANK_ABOVE = 82;

    private Swatch() {}

    /** @param index which of the piece's colours, from 0 */
    static void draw(PdfCanvas ink, LabelText text, int index, double x, double y, double width, double height) {
        PieceColour colour = text.colours().get(index);
        if (!text.request().finish().blackOnly()) {
            Srgb screen = colour.colour().srgb();
            ink.rectangle(x, y, width, height, new PrintColour(screen.red(), screen.green(), screen.blue()));
            return;
        }
        if (colour.colour().lightness() < BLANK_ABOVE) {
            double step = CLOSEST_MM
                    + (WIDEST_MM - CLOSEST_MM) * Math.max(0, colour.colour().lightness()) / BLANK_ABOVE;
            hatch(ink, index % 3, step, x, y, width, height);
        }
        ink.line(x, y, x + width, y, OUTLINE, PrintColour.BLACK);
        ink.line(x, y + height, x + width, y + height, OUTLINE, PrintColour.BLACK);
        ink.line(x, y, x, y + height, OUTLINE, PrintColour.BLACK);
        ink.line(x + width, y, x + width, y + height, OUTLINE, PrintColour.BLACK);
    }

    private static void hatch(
            PdfCanvas ink, int direction, double step, double x, double y, double width, double height) {
        if (direction == 2) {
            for (double down = step; down < height; down += step) {
                ink.line(x, y + down, x + width, y + down, HATCH, PrintColour.BLACK);
            }
            return;
        }
        double along = step * Math.sqrt(2);
        for (double c = along / 2; c < width + height; c += along) {
            double x1 = Math.max(0, c - height);
            double x2 = Math.min(width, c);
            double y1 = c - x1;
            double y2 = c - x2;
            if (direction == 0) {
                ink.line(x + x1, y + y1, x + x2, y + y2, HATCH, PrintColour.BLACK);
            } else {
                ink.line(x + x1, y + height - y1, x + x2, y + height - y2, HATCH, PrintColour.BLACK);
            }
        }
    }
}
