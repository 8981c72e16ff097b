package tenterbook.documents.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.documents.Block;
import tenterbook.typeset.StructureTag;

/** Tables over the whole measure; the head stands again on every page. */
final class TableBlocks {
    private static final double GUTTER = 3.5;
    private static final double PAD = 1.1;

    private final LayoutContext desk;
    private final PageStyle type;

    TableBlocks(LayoutContext desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    List<UnbreakableBlock> table(Block.Table table) {
        boolean pictured = table.rows().stream().anyMatch(row -> row.photo() != null);
        double picture = pictured ? Math.min(17, type.measure() * 0.12) : 0;
        double start = type.left() + (pictured ? picture + GUTTER : 0);
        double room = type.measure()
                - (start - type.left())
                - GUTTER * (table.columns().size() - 1);
        double shares =
                table.columns().stream().mapToDouble(Block.Column::share).sum();
        double[] widths = table.columns().stream()
                .mapToDouble(column -> room * column.share() / shares)
                .toArray();
        StructureTag tag = desk.document().child("Table");
        UnbreakableBlock head = head(table, start, widths, tag.heads());
        UnbreakableBlock again = head(table, start, widths, null);
        List<UnbreakableBlock> slabs = new ArrayList<>();
        slabs.add(head.tied());
        int last = table.rows().size() - 1;
        for (int i = 0; i <= last; i++) {
            UnbreakableBlock row = row(table, table.rows().get(i), picture, start, widths, tag.child("TR"), i == last);
            // Two rows at least follow the head and two end the table, so that none stands alone.
            slabs.add((i == 0 || i == last - 1 && last > 1 ? row.tied(i != last) : row).under(again));
        }
        return slabs;
    }

    /** @param tag null where the head stands again, which is no part of the text */
    private UnbreakableBlock head(Block.Table table, double start, double[] widths, StructureTag tag) {
        List<LineLayout.Set> heads = new ArrayList<>();
        double height = 0;
        for (int i = 0; i < widths.length; i++) {
            heads.add(desk.set(table.columns().get(i).head(), type.small(), widths[i]));
            height = Math.max(height, heads.get(i).height());
        }
        double tall = height;
        List<StructureTag> cells =
                heads.stream().map(set -> tag == null ? null : tag.child("TH")).toList();
        return UnbreakableBlock.of(tall + PAD * 2, type.space(0.5), "", (ink, y) -> {
            double x = start;
            for (int i = 0; i < widths.length; i++) {
                LineLayout.Set set = heads.get(i);
                double left = x;
                double right = x + widths[i];
                double at = y + PAD + tall - set.height();
                boolean figures = table.columns().get(i).figures();
                Runnable drawing = () -> {
                    if (figures) {
                        set.drawToRight(ink, right, at, PageStyle.QUIET);
                    } else {
                        set.draw(ink, left, at, PageStyle.QUIET);
                    }
                };
                if (!set.empty() && cells.get(i) != null) {
                    ink.tagged(cells.get(i), drawing);
                } else if (!set.empty()) {
                    ink.artifact(drawing);
                }
                x += widths[i] + GUTTER;
            }
            LayoutContext.rule(ink, type.left(), type.left() + type.measure(), y + PAD * 2 + tall, PageStyle.INK);
        });
    }

    private UnbreakableBlock row(
            Block.Table table,
            Block.TableRow row,
            double picture,
            double start,
            double[] widths,
            StructureTag tag,
            boolean last) {
        List<LineLayout.Set> cells = new ArrayList<>();
        double height = 0;
        for (int i = 0; i < widths.length; i++) {
            cells.add(desk.set(row.cells().get(i), type.cell(), widths[i]));
            height = Math.max(height, cells.get(i).height());
        }
        Optional<PrintImages.Shot> shot =
                row.photo() == null ? Optional.empty() : desk.shots().in(row.photo(), picture, picture * 1.2);
        double tall = Math.max(height, shot.map(PrintImages.Shot::height).orElse(0.0) + 0.6) + PAD * 2;
        StructureTag figure =
                tag.child("TD").figure(String.join(", ", row.cells().subList(0, 1)));
        List<StructureTag> tags = cells.stream().map(set -> tag.child("TD")).toList();
        return UnbreakableBlock.of(tall, 0, String.join(" / ", row.cells()), (ink, y) -> {
            shot.ifPresent(s ->
                    ink.tagged(figure, () -> ink.jpeg(s.jpeg(), type.left(), y + PAD + 0.3, s.width(), s.height())));
            double x = start;
            for (int i = 0; i < widths.length; i++) {
                LineLayout.Set set = cells.get(i);
                double left = x;
                double right = x + widths[i];
                if (!set.empty() && table.columns().get(i).figures()) {
                    ink.tagged(tags.get(i), () -> set.drawToRight(ink, right, y + PAD, PageStyle.INK));
                } else if (!set.empty()) {
                    ink.tagged(tags.get(i), () -> set.draw(ink, left, y + PAD, PageStyle.INK));
                }
                x += widths[i] + GUTTER;
            }
            LayoutContext.rule(
                    ink, type.left(), type.left() + type.measure(), y + tall, last ? PageStyle.INK : PageStyle.HAIR);
        });
    }
}
