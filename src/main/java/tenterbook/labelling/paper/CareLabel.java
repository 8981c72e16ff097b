package tenterbook.labelling.paper;

import java.util.List;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.LabelText.Part;
import tenterbook.labelling.care.CareSymbol;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.TextColumn;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;

/**
 * The sewn label: words in one colour of ink, and below them, where asked for, the care symbols supported by evidence. The top
 * is left blank for the seam. Fibre names are all of one size and face.
 */
final class CareLabel implements LabelDrawing {
    private static final double MARGIN = 3;
    private static final double SEAM = 7;

    private static final TextStyle MAKER =
            TextStyle.of(Typeface.SMALL_CAPS, 8, 9, 6.5).tracked(0.08).even();
    private static final TextStyle CONTENT = TextStyle.of(Typeface.TEXT_MEDIUM, 9, 10.5, 7);
    private static final TextStyle ORIGIN = TextStyle.of(Typeface.TEXT, 7.5, 9, 6.5);
    private static final TextStyle CARE = TextStyle.of(Typeface.TEXT, 7.5, 9, 6.5);
    private static final TextStyle NUMBER =
            TextStyle.of(Typeface.TEXT, 6.5, 9, 6).tracked(0.04);

    @Override
    public void draw(LabelText text, PdfCanvas ink) {
        double width = text.request().format().widthMm();
        double height = text.request().format().heightMm();
        double measure = width - 2 * MARGIN;
        TextColumn.SetColumn number = new TextColumn(LabelDrawing.what(text, "number"))
                .addAll(text.of(Part.NUMBER), NUMBER, 0)
                .set(ink.setter(), measure, 5);
        double foot = height - MARGIN - Mm.of(number.height());
        List<CareSymbol> symbols = text.of(Part.CARE_SYMBOL).stream()
                .flatMap(words -> CareSymbol.of(words).stream())
                .toList();
        double row = foot - (symbols.isEmpty() ? 0 : CareSymbolRow.heightMm(symbols.size(), measure) + 1.6);
        TextColumn.SetColumn words = new TextColumn(LabelDrawing.what(text, "text"))
                .addAll(text.of(Part.MAKER), MAKER, 0)
                .addAll(LabelDrawing.bound(text, Part.CONTENT), CONTENT, 6)
                .addAll(text.of(Part.ORIGIN), ORIGIN, 3)
                .addAll(text.of(Part.PARTICULARS), ORIGIN, 0)
                .addAll(text.of(Part.CARE), CARE, 4.5)
                .set(ink.setter(), measure, row - SEAM - 1);
        ink.column(words, MARGIN, SEAM, PrintColour.BLACK);
        CareSymbolRow.draw(symbols, ink, MARGIN, row, measure, PrintColour.BLACK);
        ink.column(number, MARGIN, foot, PrintColour.BLACK);
    }
}
