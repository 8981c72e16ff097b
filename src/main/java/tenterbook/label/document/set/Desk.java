package tenterbook.label.document.set;

import java.util.List;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Line;
import tenterbook.label.layout.Mm;
import tenterbook.label.layout.Style;
import tenterbook.label.layout.Tag;
import tenterbook.label.layout.Tone;

/** What every block is set with: type, words, photographs, the document's structure. */
record Desk(Type type, Words words, Shots shots, Tag document) {
    Words.Set set(String text, Style style, double width) {
        return words.set(text, style, width);
    }

    /** A paragraph line by line; its first two lines and its last two stay together. */
    void paragraph(
            List<Slab> slabs, String text, Style style, double x, double width, double before, Tone tone, Tag tag) {
        Words.Set set = words.set(text, style, width);
        int count = set.lines().size();
        double leading = Mm.of(style.leading());
        for (int i = 0; i < count; i++) {
            int line = i;
            boolean tied = count > 1 && (i == 0 || i == count - 2);
            slabs.add(Slab.of(
                            leading,
                            i == 0 ? before : 0,
                            set.lines().get(i).text(),
                            (ink, y) -> ink.tagged(tag, () -> set.line(ink, line, x, y, tone)))
                    .tied(tied));
        }
    }

    static void rule(Ink ink, double x1, double x2, double y, Tone tone) {
        ink.artifact(() -> ink.line(x1, y, x2, y, Type.HAIRLINE, tone));
    }

    /** The text of all lines, for messages. */
    static String text(Words.Set set) {
        return String.join(" ", set.lines().stream().map(Line::text).toList());
    }
}
