package tenterbook.documents.layout;

import java.util.List;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.StructureTag;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;

/** What every block is set with: type, words, photographs, the document's structure. */
record LayoutContext(PageStyle type, LineLayout words, PrintImages shots, StructureTag document) {
    LineLayout.Set set(String text, TextStyle style, double width) {
        return words.set(text, style, width);
    }

    /** A paragraph line by line; its first two lines and its last two stay together. */
    void paragraph(
            List<UnbreakableBlock> slabs,
            String text,
            TextStyle style,
            double x,
            double width,
            double before,
            PrintColour tone,
            StructureTag tag) {
        LineLayout.Set set = words.set(text, style, width);
        int count = set.lines().size();
        double leading = Mm.of(style.leading());
        for (int i = 0; i < count; i++) {
            int line = i;
            boolean tied = count > 1 && (i == 0 || i == count - 2);
            slabs.add(UnbreakableBlock.of(
                            leading,
                            i == 0 ? before : 0,
                            set.lines().get(i).text(),
                            (ink, y) -> ink.tagged(tag, () -> set.line(ink, line, x, y, tone)))
                    .tied(tied));
        }
    }

    static void rule(PdfCanvas ink, double x1, double x2, double y, PrintColour tone) {
        ink.artifact(() -> ink.line(x1, y, x2, y, PageStyle.HAIRLINE, tone));
    }

    /** The text of all lines, for messages. */
    static String text(LineLayout.Set set) {
        return String.join(" ", set.lines().stream().map(TextLine::text).toList());
    }
}
