package tenterbook.labelling.paper;

import java.util.function.Consumer;
import tenterbook.labelling.care.CareSymbol;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;

/**
 * One care symbol in shapes of our own after the plain geometry of the standard: tub, triangle, square, iron, circle; a cross
 * for 'do not', bars below for milder treatment, dots for heat. Lines and dots are partly from memory. Drawn on a square of ten
 * units: the figure in the upper nine, bars in the lowest.
 *
 * @see "ISO 3758, after published tables of care symbols"
 */
final class CareSymbolDrawing {
    private final PdfCanvas ink;
    private final double unit;
    private final double weight;
    private final PrintColour tone;

    /** @param size width and height in millimetres, from the upper left corner of {@code ink} */
    CareSymbolDrawing(PdfCanvas ink, double size, PrintColour tone) {
        this.ink = ink;
        this.unit = size / 10;
        this.weight = Mm.points(size) * 0.05;
        this.tone = tone;
    }

    void draw(CareSymbol symbol) {
        switch (symbol.about()) {
            case WASHING -> tub(symbol);
            case BLEACHING -> triangle(symbol);
            case DRYING -> square(symbol);
            case IRONING -> iron(symbol);
            case PROFESSIONAL_CARE -> circle(symbol);
            case WARNING -> throw new IllegalStateException("No symbol is a warning; found " + symbol);
        }
        if (symbol.name().startsWith("NO_")) {
            figure(f -> f.line(0.3, 0.2, 9.7, 8.7).line(9.7, 0.2, 0.3, 8.7));
        }
        if (symbol.name().endsWith("MILD")) {
            figure(f -> f.line(2, 9.1, 8, 9.1));
        }
        if (symbol.name().endsWith("VERY_MILD")) {
            figure(f -> f.line(2, 9.8, 8, 9.8));
        }
    }

    private void tub(CareSymbol symbol) {
        figure(f -> f.path(0.3, 0.7).to(1.8, 8.1).to(8.2, 8.1).to(9.7, 0.7));
        if (symbol == CareSymbol.HAND_WASH) {
            hand();
            return;
        }
        figure(f -> f.path(0.55, 1.9)
                .bend(1.5, 1, 2.4, 1, 3.5, 1.9)
                .bend(4.4, 2.7, 5.6, 2.7, 6.5, 1.9)
                .bend(7.6, 1, 8.5, 1, 9.45, 1.9));
        if (symbol != CareSymbol.NO_WASH) {
            letters(symbol.name().replaceAll("\\D", ""), 5, 6.9, 4.9);
        }
    }

    /** An arm from above, thumb and fingers down in the water, which parts around it. */
    private void hand() {
        figure(f -> f.path(0.55, 1.9).bend(1.4, 1.1, 2.2, 1.1, 3.1, 1.7));
        figure(f -> f.path(6.9, 1.7).bend(7.8, 1.1, 8.6, 1.1, 9.45, 1.9));
        figure(f -> f.path(4.1, 0.3)
                .to(4.1, 2.4)
                .bend(3.2, 3.1, 2.8, 4, 2.7, 4.9)
                .bend(2.7, 5.7, 3.5, 5.7, 3.6, 5)
                .to(3.9, 4.4)
                .to(3.9, 6.2)
                .bend(3.9, 7.2, 6.9, 7.2, 6.9, 6)
                .to(6.9, 4)
                .bend(6.9, 3.1, 6.1, 3, 6.1, 2.2)
                .to(6.1, 0.3));
        figure(f -> f.line(5.4, 5, 5.4, 6.7));
    }

    private void triangle(CareSymbol symbol) {
        figure(f -> f.path(5, 0.5).to(9.6, 8.3).to(0.4, 8.3).shut());
        if (symbol == CareSymbol.OXYGEN_BLEACH) {
            // Parallel to the left side: from the base to the right side.
            figure(f -> f.line(3.5, 8.3, 6.55, 3.13).line(6.5, 8.3, 8.05, 5.67));
        }
    }

    private void square(CareSymbol symbol) {
        figure(f -> f.path(0.9, 0.4).to(9.1, 0.4).to(9.1, 8.6).to(0.9, 8.6).shut());
        switch (symbol) {
            case TUMBLE_DRY -> {
                round(5, 4.5, 4.1);
                dots(2, 5, 4.5);
            }
            case TUMBLE_DRY_LOW -> {
                round(5, 4.5, 4.1);
                dots(1, 5, 4.5);
            }
            case NO_TUMBLE_DRY -> round(5, 4.5, 4.1);
            case LINE_DRY -> figure(f -> f.line(5, 1.9, 5, 7.1));
            case FLAT_DRY -> figure(f -> f.line(2.4, 4.5, 7.6, 4.5));
            default -> throw new IllegalStateException("No symbol of drying: " + symbol);
        }
    }

    private void iron(CareSymbol symbol) {
        figure(f -> f.path(3.3, 1.2)
                .to(8.1, 1.2)
                .to(9.7, 7.8)
                .to(0.3, 7.8)
                .bend(0.7, 5.4, 2.2, 4.1, 4.5, 4.1)
                .to(8.8, 4.1));
        switch (symbol) {
            case IRON_110 -> dots(1, 5.3, 6);
            case IRON_150 -> dots(2, 5.3, 6);
            case IRON_200 -> dots(3, 5.3, 6);
            default -> {}
        }
    }

    private void circle(CareSymbol symbol) {
        round(5, 4.5, 4.2);
        if (symbol == CareSymbol.DRY_CLEAN_P) {
            letters("P", 5, 6.6, 5.8);
        } else if (symbol == CareSymbol.DRY_CLEAN_F) {
            letters("F", 5, 6.6, 5.8);
        }
    }

    private void round(double x, double y, double radius) {
        ink.circle(x * unit, y * unit, radius * unit, weight, tone);
    }

    /** Dots of heat, side by side about a middle. */
    private void dots(int count, double x, double y) {
        double across = 1.15;
        for (int i = 0; i < count; i++) {
            double middle = x + (i - (count - 1) / 2.0) * 1.9;
            // A very short stroke with round ends is a dot.
            ink.figure(
                    Mm.points(across * unit),
                    tone,
                    pen -> pen.move(middle * unit, y * unit).line((middle + 0.01) * unit, y * unit));
        }
    }

    private void letters(String text, double middle, double baseline, double size) {
        double points = Mm.points(size * unit);
        TextLine line = ink.setter().line(text, TextStyle.of(Typeface.TEXT_MEDIUM, points, points, points));
        ink.text(line, middle * unit - Mm.of(line.width()) / 2, baseline * unit, tone);
    }

    private void figure(Consumer<Pen> drawing) {
        ink.figure(weight, tone, figure -> drawing.accept(new Pen(figure, unit)));
    }

    /** A figure's pen in the symbol's own units. */
    private record Pen(PdfCanvas.Figure figure, double unit) {
        Pen path(double x, double y) {
            figure.move(x * unit, y * unit);
            return this;
        }

        Pen to(double x, double y) {
            figure.line(x * unit, y * unit);
            return this;
        }

        Pen line(double x1, double y1, double x2, double y2) {
            return path(x1, y1).to(x2, y2);
        }

        Pen bend(double x1, double y1, double x2, double y2, double x, double y) {
            figure.curve(x1 * unit, y1 * unit, x2 * unit, y2 * unit, x * unit, y * unit);
            return this;
        }

        void shut() {
            figure.close();
        }
    }
}
