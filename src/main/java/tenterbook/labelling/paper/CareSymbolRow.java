package tenterbook.labelling.paper;

import java.util.List;
import tenterbook.labelling.care.CareSymbol;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;

/** Care symbols side by side, in the order of ISO 3758. */
final class CareSymbolRow {
    /** Widest and so highest a symbol is drawn, in millimetres. */
    private static final double LARGEST = 5;

    private static final double GAP = 0.12;

    private CareSymbolRow() {}

    /** Height of a row of so many symbols within {@code measure}, in millimetres; a symbol is as high as wide. */
    static double heightMm(int symbols, double measure) {
        return symbols == 0 ? 0 : Math.min(LARGEST, measure / (symbols + (symbols - 1) * GAP));
    }

    static void draw(List<CareSymbol> symbols, PdfCanvas ink, double x, double y, double measure, PrintColour tone) {
        double size = heightMm(symbols.size(), measure);
        for (int i = 0; i < symbols.size(); i++) {
            new CareSymbolDrawing(ink.from(x + i * size * (1 + GAP), y), size, tone).draw(symbols.get(i));
        }
    }
}
