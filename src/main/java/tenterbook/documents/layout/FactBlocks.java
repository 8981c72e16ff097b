package tenterbook.documents.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.documents.Block;
import tenterbook.typeset.Mm;
import tenterbook.typeset.StructureTag;

/** Facts under their names, and pieces with theirs beside a small photograph. */
final class FactBlocks {
    /** Values longer than this may go over to the next page. */
    private static final int MOST_LINES_KEPT = 8;

    private static final double PAD = 0.7;

    private final LayoutContext desk;
    private final PageStyle type;

    FactBlocks(LayoutContext desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    List<UnbreakableBlock> facts(Block.Facts facts) {
        List<UnbreakableBlock> slabs = new ArrayList<>();
        StructureTag table = desk.document().child("Table");
        for (Block.Fact fact : facts.facts()) {
            double before = slabs.isEmpty() ? type.space(0.35) : 0;
            if (type.labels() > 0) {
                slabs.addAll(row(fact, table, type.left(), type.labels(), type.gutter(), type.mainMeasure(), before));
            } else {
                slabs.addAll(
                        row(fact, table, type.left(), type.measure() * 0.28, 4, type.measure() * 0.72 - 4, before));
            }
        }
        return slabs;
    }

    /** One fact: a hairline, its name at the left, its value at the right. */
    private List<UnbreakableBlock> row(
            Block.Fact fact, StructureTag table, double x, double labels, double gutter, double width, double before) {
        StructureTag row = table.child("TR");
        StructureTag head = row.child("TH");
        StructureTag cell = row.child("TD");
        LineLayout.Set label = desk.set(fact.label(), type.label(), labels);
        LineLayout.Set value = desk.set(fact.value(), type.value(), width);
        double from = x + labels + gutter;
        // Both on one baseline, whatever their sizes.
        double down = value.empty() ? 0 : value.baseline() - label.baseline();
        int first = value.lines().size() <= MOST_LINES_KEPT
                ? value.lines().size()
                : Math.max(3, label.lines().size());
        double leading = Mm.of(type.value().leading());
        double height = Math.max(first * leading, label.height()) + PAD * 2;
        List<UnbreakableBlock> slabs = new ArrayList<>();
        slabs.add(UnbreakableBlock.of(height, before, fact.label() + ": " + LayoutContext.text(value), (ink, y) -> {
            LayoutContext.rule(ink, x, from + width, y, PageStyle.HAIR);
            if (!label.empty()) {
                ink.tagged(head, () -> label.draw(ink, x, y + PAD + down, PageStyle.QUIET));
            }
            if (first > 0) {
                ink.tagged(cell, () -> {
                    for (int i = 0; i < first; i++) {
                        value.line(ink, i, from, y + PAD + i * leading, PageStyle.INK);
                    }
                });
            }
        }));
        for (int i = first; i < value.lines().size(); i++) {
            int line = i;
            slabs.add(UnbreakableBlock.of(
                            leading,
                            i == first ? -PAD : 0,
                            value.lines().get(i).text(),
                            (ink, y) -> ink.tagged(cell, () -> value.line(ink, line, from, y, PageStyle.INK)))
                    .tied(i == value.lines().size() - 2));
        }
        return slabs;
    }

    /** A piece: what stands beside its photograph stays with it. */
    List<UnbreakableBlock> entry(Block.Entry entry) {
        boolean narrow = type.labels() == 0;
        double shotWidth = narrow ? type.measure() * 0.25 : type.labels();
        double x = narrow ? type.left() + shotWidth + 4 : type.main();
        double width = type.left() + type.measure() - x;
        double labels = Math.min(width * 0.26, 34);
        StructureTag part = desk.document().child("Sect");
        StructureTag title = part.child("H3");
        StructureTag table = part.child("Table");
        Optional<PrintImages.Shot> shot =
                entry.photo() == null ? Optional.empty() : desk.shots().in(entry.photo(), shotWidth, shotWidth * 1.15);
        StructureTag figure = part.figure(entry.instead().isEmpty() ? entry.heading() : entry.instead());
        LineLayout.Set heading = desk.set(entry.heading(), type.h3(), width);
        double pad = 1.6;
        List<UnbreakableBlock> rows = new ArrayList<>();
        for (Block.Fact fact : entry.facts()) {
            rows.addAll(row(fact, table, x, labels, 3, width - labels - 3, 0));
        }
        double headed = pad + heading.height() + 0.6;
        int beside = 0;
        double height = headed;
        double needed = pad + shot.map(PrintImages.Shot::height).orElse(0.0) + 1;
        while (beside < rows.size() && (height < needed || beside < 2)) {
            height += rows.get(beside).before() + rows.get(beside).height();
            beside++;
        }
        int together = beside;
        String words = entry.heading();
        List<UnbreakableBlock> slabs = new ArrayList<>();
        slabs.add(UnbreakableBlock.of(Math.max(height, needed), type.space(0.9), words, (ink, y) -> {
            LayoutContext.rule(ink, type.left(), type.left() + type.measure(), y, PageStyle.INK);
            ink.tagged(title, () -> heading.draw(ink, x, y + pad - 0.4, PageStyle.INK));
            shot.ifPresent(
                    s -> ink.tagged(figure, () -> ink.jpeg(s.jpeg(), type.left(), y + pad, s.width(), s.height())));
            double at = y + headed;
            for (UnbreakableBlock row : rows.subList(0, together)) {
                at += row.before();
                row.drawing().draw(ink, at);
                at += row.height();
            }
        }));
        slabs.addAll(rows.subList(beside, rows.size()));
        double all = slabs.stream().mapToDouble(UnbreakableBlock::height).sum();
        if (all < type.pageHeight() / 2) {
            for (int i = 0; i < slabs.size() - 1; i++) {
                slabs.set(i, slabs.get(i).tied());
            }
        }
        return slabs;
    }
}
