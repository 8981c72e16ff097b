package tenterbook.documents.layout;

import java.util.ArrayList;
import java.util.List;
import tenterbook.documents.Block;
import tenterbook.labelling.paper.SquareCode;
import tenterbook.typeset.StructureTag;
import tenterbook.typeset.TextStyle;
import tenterbook.words.Message;

/** Photographs with their marks, side by side, and square codes. */
final class PictureBlocks {
    private static final double GUTTER = 5;

    /** A narrower photograph shows too little, and its caption has too few words on a line. Millimetres. */
    private static final double LEAST_BESIDE = 38;

    private final LayoutContext desk;
    private final PageStyle type;

    PictureBlocks(LayoutContext desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    /** Photographs that stand side by side, as one slab; a marked one has its legend beside or below it. */
    List<UnbreakableBlock> photographs(List<Block.Photograph> row) {
        if (row.get(0).extent() == Block.Extent.LARGE) {
            return large(row);
        }
        int across = switch (row.get(0).extent()) {
            case LARGE, WHOLE -> 1;
            case HALF -> 2;
            case THIRD -> 3;
        };
        boolean marked = across == 1 && !row.get(0).marks().isEmpty();
        double width = marked ? type.measure() * 0.62 : (type.measure() - GUTTER * (across - 1)) / across;
        double most = type.tallest(
                row.get(0).extent(),
                row.stream().anyMatch(photo -> !photo.marks().isEmpty()));
        List<FramedPhotograph> framed = new ArrayList<>();
        for (Block.Photograph photo : row) {
            framed.add(FramedPhotograph.of(photo, width, most, desk));
        }
        double tallest =
                framed.stream().mapToDouble(FramedPhotograph::height).max().orElse(0);
        double whole = framed.stream()
                .mapToDouble(FramedPhotograph::heightWithCaption)
                .max()
                .orElse(0);
        List<UnbreakableBlock> slabs = new ArrayList<>();
        List<Block.Mark> marks =
                row.stream().flatMap(photo -> photo.marks().stream()).toList();
        double beside = marked ? framed.get(0).width() + GUTTER : 0;
        List<UnbreakableBlock> legend =
                legend(marks, marked ? type.left() + beside : type.left(), type.measure() - beside);
        double legendHeight = legend.stream()
                .mapToDouble(slab -> slab.before() + slab.height())
                .sum();
        boolean fits = marked && legendHeight <= tallest;
        String words =
                String.join(" / ", row.stream().map(Block.Photograph::caption).toList());
        slabs.add(UnbreakableBlock.of(whole, type.space(0.8), words, (ink, y) -> {
                    double x = type.left();
                    for (FramedPhotograph each : framed) {
                        each.draw(ink, x, y);
                        x += Math.max(width, 0) + GUTTER;
                    }
                    if (fits) {
                        double at = y;
                        for (UnbreakableBlock slab : legend) {
                            at += slab.before();
                            slab.drawing().draw(ink, at);
                            at += slab.height();
                        }
                    }
                })
                .tied(!fits && !legend.isEmpty()));
        if (!fits) {
            slabs.addAll(marked ? legend(marks, type.main(), type.mainMeasure()) : legend);
        }
        return slabs;
    }

    /** The first large; of the others as many beside it as have room there, the rest below in rows of three. */
    private List<UnbreakableBlock> large(List<Block.Photograph> row) {
        FramedPhotograph main =
                FramedPhotograph.of(row.get(0), type.measure(), type.tallest(Block.Extent.LARGE, false), desk);
        double x = type.left() + main.widthWithCaption() + GUTTER;
        double width = type.left() + type.measure() - x;
        List<FramedPhotograph> beside = new ArrayList<>();
        double height = 0;
        for (int i = 1; i < row.size() && width >= LEAST_BESIDE; i++) {
            FramedPhotograph next =
                    FramedPhotograph.of(row.get(i), width, type.tallest(Block.Extent.THIRD, false), desk);
            double more = (beside.isEmpty() ? 0 : GUTTER) + next.heightWithCaption();
            if (height + more > main.heightWithCaption()) {
                break;
            }
            beside.add(next);
            height += more;
        }
        int rest = 1 + beside.size();
        String words = String.join(
                " / ",
                row.subList(0, rest).stream().map(Block.Photograph::caption).toList());
        List<UnbreakableBlock> slabs = new ArrayList<>();
        slabs.add(UnbreakableBlock.of(main.heightWithCaption(), type.space(0.8), words, (ink, y) -> {
            main.draw(ink, type.left(), y);
            double at = y;
            for (FramedPhotograph each : beside) {
                each.draw(ink, x, at);
                at += each.heightWithCaption() + GUTTER;
            }
        }));
        for (int i = rest; i < row.size(); i += 3) {
            slabs.addAll(photographs(row.subList(i, Math.min(row.size(), i + 3))));
        }
        return slabs;
    }

    private List<UnbreakableBlock> legend(List<Block.Mark> marks, double x, double width) {
        List<UnbreakableBlock> slabs = new ArrayList<>();
        double inset = 6.5;
        StructureTag list = desk.document().child("L");
        for (Block.Mark mark : marks) {
            StructureTag item = list.child("LI");
            StructureTag label = item.child("Lbl");
            LineLayout.Set set = desk.set(mark.words(), type.cell(), width - inset);
            StructureTag body = item.child("LBody");
            slabs.add(UnbreakableBlock.of(Math.max(set.height(), 4.6), 1, mark.words(), (ink, y) -> {
                ink.tagged(label, () -> FramedPhotograph.number(desk, ink, mark.number(), x + 2.1, y + 2.2));
                ink.tagged(body, () -> set.draw(ink, x + inset, y, PageStyle.INK));
            }));
        }
        return slabs;
    }

    List<UnbreakableBlock> code(Block.Code code) {
        return List.of(code(code, List.of()));
    }

    /**
     * The square at the left, its words at the right.
     *
     * @param beside what stands at the right below its words
     */
    UnbreakableBlock code(Block.Code code, List<UnbreakableBlock> beside) {
        SquareCode square = new SquareCode(code.content());
        double side = Math.min(30, Math.max(type.labels() > 0 ? type.labels() - 6 : 24, 16));
        double quiet = square.quietMm(side);
        double x = type.labels() > 0 ? type.main() : type.left() + side + quiet;
        double width = type.left() + type.measure() - x;
        LineLayout.Set shown = desk.set(
                code.shown(),
                TextStyle.of(
                                type.h3().face(),
                                type.value().size() * 1.75,
                                type.value().size() * 2.4,
                                type.value().size())
                        .tracked(0.06),
                width);
        LineLayout.Set words = desk.set(code.words(), type.small(), width);
        StructureTag figure = desk.document()
                .figure(Message.of("document.code-says", "content", code.content())
                        .onPaper());
        StructureTag p = desk.document().child("P");
        double worded = shown.height() + words.height();
        double under = beside.stream()
                .mapToDouble(slab -> slab.before() + slab.height())
                .sum();
        double height = Math.max(side + quiet, worded + under);
        return UnbreakableBlock.of(height, type.space(1), code.shown() + " " + code.words(), (ink, y) -> {
            ink.tagged(figure, () -> square.draw(ink, type.left(), y, side));
            if (!shown.empty()) {
                ink.tagged(p, () -> shown.draw(ink, x, y - 1, PageStyle.INK));
            }
            if (!words.empty()) {
                ink.tagged(p, () -> words.draw(ink, x, y - 1 + shown.height(), PageStyle.QUIET));
            }
            double at = y + worded;
            for (UnbreakableBlock slab : beside) {
                at += slab.before();
                slab.drawing().draw(ink, at);
                at += slab.height();
            }
        });
    }
}
