package tenterbook.label.document.set;

import java.util.ArrayList;
import java.util.List;
import tenterbook.label.document.Block;
import tenterbook.label.layout.Mm;
import tenterbook.label.layout.Style;
import tenterbook.label.layout.Tag;
import tenterbook.label.layout.Tone;

/** Headings, paragraphs, notes and lists. */
final class TextBlocks {
    private final Desk desk;
    private final Type type;

    TextBlocks(Desk desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    List<Slab> heading(Block.Heading heading) {
        Style style = heading.level() == 1 ? type.h1() : heading.level() == 2 ? type.h2() : type.h3();
        Words.Set set = desk.set(heading.text(), style, type.measure());
        Tag tag = desk.document().child("H" + (heading.level() + 1));
        boolean ruled = heading.level() == 2;
        double lead = ruled ? type.space(0.35) : 0;
        double height = lead + set.height() + type.space(heading.level() == 3 ? 0.1 : 0.3);
        double before = type.space(heading.level() == 1 ? 1 : heading.level() == 2 ? 1.25 : 0.8);
        return List.of(Slab.of(height, before, heading.text(), (ink, y) -> {
                    if (heading.level() < 3) {
                        ink.bookmark(heading.level(), heading.text(), y);
                    }
                    if (ruled) {
                        Desk.rule(ink, type.left(), type.left() + type.measure(), y, Type.INK);
                    }
                    ink.tagged(tag, () -> set.draw(ink, type.left(), y + lead, Type.INK));
                })
                .tied());
    }

    List<Slab> paragraph(Block.Paragraph paragraph) {
        List<Slab> slabs = new ArrayList<>();
        Tag tag = desk.document().child("P");
        desk.paragraph(
                slabs, paragraph.text(), type.body(), type.main(), type.mainMeasure(), type.space(0.55), Type.INK, tag);
        return slabs;
    }

    /** Cautions and what is missing have a bar at their left. */
    List<Slab> note(Block.Note note) {
        boolean barred = note.manner() != Block.Manner.NOTE;
        double inset = barred ? 3 : 0;
        // At the bench a caution runs over the whole measure: fewer lines, and none overlooked.
        boolean wide = barred && type.sectionsWhole();
        double x = wide ? type.left() : type.main();
        double width = wide ? type.measure() : type.mainMeasure();
        Style style = barred ? type.cell() : type.small();
        Tone tone = note.manner() == Block.Manner.NOTE ? Type.QUIET : Type.INK;
        Tag tag = desk.document().child("P");
        List<Slab> slabs = new ArrayList<>();
        desk.paragraph(slabs, note.text(), style, x + inset, width - inset, type.space(0.55), tone, tag);
        return barred ? slabs.stream().map(slab -> barred(slab, x)).toList() : slabs;
    }

    private Slab barred(Slab slab, double x) {
        return new Slab(slab.height(), slab.before(), slab.withNext(), false, null, slab.words(), (ink, y) -> {
            ink.artifact(() -> ink.rectangle(x, y, 0.9, slab.height(), Type.HEED));
            slab.drawing().draw(ink, y);
        });
    }

    List<Slab> items(Block.Items items) {
        List<Slab> slabs = new ArrayList<>();
        Tag list = desk.document().child("L");
        double inset = items.numbered()
                ? Mm.of(type.body().size()) * 1.7
                : Mm.of(type.body().size()) * 1.1;
        for (int i = 0; i < items.items().size(); i++) {
            Tag item = list.child("LI");
            Tag label = item.child("Lbl");
            Tag body = item.child("LBody");
            String sign = items.numbered() ? (i + 1) + "." : "–";
            Words.Set mark = desk.set(sign, type.body(), inset);
            List<Slab> lines = new ArrayList<>();
            desk.paragraph(
                    lines,
                    items.items().get(i),
                    type.body(),
                    type.main() + inset,
                    type.mainMeasure() - inset,
                    type.space(i == 0 ? 0.55 : 0.25),
                    Type.INK,
                    body);
            for (int l = 0; l < lines.size(); l++) {
                Slab line = lines.get(l);
                slabs.add(
                        l > 0
                                ? line
                                : new Slab(
                                        line.height(),
                                        line.before(),
                                        line.withNext(),
                                        false,
                                        null,
                                        line.words(),
                                        (ink, y) -> {
                                            ink.tagged(label, () -> mark.draw(ink, type.main(), y, Type.QUIET));
                                            line.drawing().draw(ink, y);
                                        }));
            }
        }
        return slabs;
    }
}
