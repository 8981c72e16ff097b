package tenterbook.label.paper;

import java.util.List;
import tenterbook.label.LabelText;
import tenterbook.label.LabelText.Part;
import tenterbook.label.care.CareSymbol;
import tenterbook.label.layout.Column;
import tenterbook.label.layout.Face;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Mm;
import tenterbook.label.layout.Style;
import tenterbook.label.layout.Tone;

/**
 * The sewn label: words in one colour of ink, and below them, where asked for, the care symbols that the
 * evidence carries. The head is left blank for the seam. Fibre names are all of one size and
 * face.
 */
final class CareLabel implements LabelDrawing {
    private static final double MARGIN = 3;
    private static final double SEAM = 7;

    private static final Style MAKER =
            Style.of(Face.SMALL_CAPS, 8, 9, 6.5).tracked(0.08).even();
    private static final Style CONTENT = Style.of(Face.TEXT_MEDIUM, 9, 10.5, 7);
    private static final Style ORIGIN = Style.of(Face.TEXT, 7.5, 9, 6.5);
    private static final Style CARE = Style.of(Face.TEXT, 7.5, 9, 6.5);
    private static final Style NUMBER = Style.of(Face.TEXT, 6.5, 9, 6).tracked(0.04);

    @Override
    public void draw(LabelText text, Ink ink) {
        double width = text.request().format().widthMm();
        double height = text.request().format().heightMm();
        double measure = width - 2 * MARGIN;
        Column.SetColumn number = new Column(LabelDrawing.what(text, "number"))
                .addAll(text.of(Part.NUMBER), NUMBER, 0)
                .set(ink.setter(), measure, 5);
        double foot = height - MARGIN - Mm.of(number.height());
        List<CareSymbol> symbols = text.of(Part.CARE_SYMBOL).stream()
                .flatMap(words -> CareSymbol.of(words).stream())
                .toList();
        double row = foot - (symbols.isEmpty() ? 0 : CareSymbolRow.heightMm(symbols.size(), measure) + 1.6);
        Column.SetColumn words = new Column(LabelDrawing.what(text, "text"))
                .addAll(text.of(Part.MAKER), MAKER, 0)
                .addAll(LabelDrawing.bound(text, Part.CONTENT), CONTENT, 6)
                .addAll(text.of(Part.ORIGIN), ORIGIN, 3)
                .addAll(text.of(Part.PARTICULARS), ORIGIN, 0)
                .addAll(text.of(Part.CARE), CARE, 4.5)
                .set(ink.setter(), measure, row - SEAM - 1);
        ink.column(words, MARGIN, SEAM, Tone.BLACK);
        CareSymbolRow.draw(symbols, ink, MARGIN, row, measure, Tone.BLACK);
        ink.column(number, MARGIN, foot, Tone.BLACK);
    }
}
