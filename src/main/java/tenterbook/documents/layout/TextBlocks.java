package tenterbook.documents.layout;

import java.util.ArrayList;
import java.util.List;
import tenterbook.documents.Block;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.StructureTag;
import tenterbook.typeset.TextStyle;

/** Headings, paragraphs, notes and lists. */
final class TextBlocks {
    /** A note of more lines may go over to the next page. */
    private static final int MOST_LINES_KEPT = 6;

    private final LayoutContext desk;
    private final PageStyle type;

    TextBlocks(LayoutContext desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    List<UnbreakableBlock> heading(Block.Heading heading) {
        TextStyle style = heading.level() == 1 ? type.h1() : heading.level() == 2 ? type.h2() : type.h3();
        LineLayout.Set set = desk.set(heading.text(), style, type.measure());
        StructureTag tag = desk.document().child("H" + (heading.level() + 1));
        boolean ruled = heading.level() == 2;
        double lead = ruled ? type.space(0.35) : 0;
        double height = lead + set.height() + type.space(heading.level() == 3 ? 0.1 : 0.3);
        double before = type.space(heading.level() == 1 ? 1 : heading.level() == 2 ? 1.25 : 0.8);
        return List.of(UnbreakableBlock.of(height, before, heading.text(), (ink, y) -> {
                    if (heading.level() < 3) {
                        ink.bookmark(heading.level(), heading.text(), y);
                    }
                    if (ruled) {
                        LayoutContext.rule(ink, type.left(), type.left() + type.measure(), y, PageStyle.INK);
                    }
                    ink.tagged(tag, () -> set.draw(ink, type.left(), y + lead, PageStyle.INK));
                })
                .tied());
    }

    List<UnbreakableBlock> paragraph(Block.Paragraph paragraph) {
        List<UnbreakableBlock> slabs = new ArrayList<>();
        StructureTag tag = desk.document().child("P");
        desk.paragraph(
                slabs,
                paragraph.text(),
                type.body(),
                type.main(),
                type.mainMeasure(),
                type.space(0.55),
                PageStyle.INK,
                tag);
        return slabs;
    }

    /** Cautions and what is missing have a bar at their left. */
    List<UnbreakableBlock> note(Block.Note note) {
        boolean barred = note.manner() != Block.Manner.NOTE;
        double inset = barred ? 3 : 0;
        // At the bench a caution runs over the whole measure: fewer lines, and none overlooked.
        boolean wide = barred && type.sectionsWhole();
        double x = wide ? type.left() : type.main();
        double width = wide ? type.measure() : type.mainMeasure();
        TextStyle style = barred ? type.cell() : type.small();
        PrintColour tone = note.manner() == Block.Manner.NOTE ? PageStyle.QUIET : PageStyle.INK;
        StructureTag tag = desk.document().child("P");
        List<UnbreakableBlock> slabs = new ArrayList<>();
        desk.paragraph(slabs, note.text(), style, x + inset, width - inset, type.space(0.55), tone, tag);
        if (slabs.size() <= MOST_LINES_KEPT) {
            slabs.subList(0, slabs.size() - 1).replaceAll(UnbreakableBlock::tied);
        }
        return barred ? slabs.stream().map(slab -> barred(slab, x)).toList() : slabs;
    }

    private UnbreakableBlock barred(UnbreakableBlock slab, double x) {
        return new UnbreakableBlock(
                slab.height(), slab.before(), slab.withNext(), false, null, slab.words(), (ink, y) -> {
                    ink.artifact(() -> ink.rectangle(x, y, 0.9, slab.height(), PageStyle.HEED));
                    slab.drawing().draw(ink, y);
                });
    }

    List<UnbreakableBlock> items(Block.Items items) {
        List<UnbreakableBlock> slabs = new ArrayList<>();
        StructureTag list = desk.document().child("L");
        double inset = items.numbered()
                ? Mm.of(type.body().size()) * 1.7
                : Mm.of(type.body().size()) * 1.1;
        for (int i = 0; i < items.items().size(); i++) {
            StructureTag item = list.child("LI");
            StructureTag label = item.child("Lbl");
            StructureTag body = item.child("LBody");
            String sign = items.numbered() ? (i + 1) + "." : "–";
            LineLayout.Set mark = desk.set(sign, type.body(), inset);
            List<UnbreakableBlock> lines = new ArrayList<>();
            desk.paragraph(
                    lines,
                    items.items().get(i),
                    type.body(),
                    type.main() + inset,
                    type.mainMeasure() - inset,
                    type.space(i == 0 ? 0.55 : 0.25),
                    PageStyle.INK,
                    body);
            for (int l = 0; l < lines.size(); l++) {
                UnbreakableBlock line = lines.get(l);
                slabs.add(
                        l > 0
                                ? line
                                : new UnbreakableBlock(
                                        line.height(),
                                        line.before(),
                                        line.withNext(),
                                        false,
                                        null,
                                        line.words(),
                                        (ink, y) -> {
                                            ink.tagged(label, () -> mark.draw(ink, type.main(), y, PageStyle.QUIET));
                                            line.drawing().draw(ink, y);
                                        }));
            }
        }
        return slabs;
    }
}
