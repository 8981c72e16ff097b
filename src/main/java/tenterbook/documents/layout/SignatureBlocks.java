package tenterbook.documents.layout;

import java.util.ArrayList;
import java.util.List;
import tenterbook.documents.Block;
import tenterbook.typeset.StructureTag;

/** Room for a hand: signatures, and lines to write on. */
final class SignatureBlocks {
    private static final double GUTTER = 10;
    private static final double TO_SIGN = 13;

    private final LayoutContext desk;
    private final PageStyle type;

    SignatureBlocks(LayoutContext desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    List<UnbreakableBlock> signatures(Block.Signatures signatures) {
        List<UnbreakableBlock> slabs = new ArrayList<>();
        double width = (type.measure() - GUTTER) / 2;
        List<String> who = signatures.who();
        for (int i = 0; i < who.size(); i += 2) {
            List<LineLayout.Set> pair = who.subList(i, Math.min(i + 2, who.size())).stream()
                    .map(each -> desk.set(each, type.small(), width))
                    .toList();
            List<StructureTag> tags =
                    pair.stream().map(set -> desk.document().child("P")).toList();
            double words =
                    pair.stream().mapToDouble(LineLayout.Set::height).max().orElse(0);
            slabs.add(UnbreakableBlock.of(TO_SIGN + 1 + words, type.space(0.5), "", (ink, y) -> {
                        for (int k = 0; k < pair.size(); k++) {
                            double x = type.left() + k * (width + GUTTER);
                            LineLayout.Set set = pair.get(k);
                            LayoutContext.rule(ink, x, x + width, y + TO_SIGN, PageStyle.INK);
                            ink.tagged(tags.get(k), () -> set.draw(ink, x, y + TO_SIGN + 0.6, PageStyle.QUIET));
                        }
                    })
                    .tied(i + 2 < who.size()));
        }
        return slabs;
    }

    List<UnbreakableBlock> blank(Block.Blank blank) {
        double apart = Math.max(8, type.space(1.6));
        double left = type.labels() > 0 ? type.main() : type.left();
        LineLayout.Set label =
                desk.set(blank.label(), type.label(), type.labels() > 0 ? type.labels() : type.measure());
        StructureTag tag = desk.document().child("P");
        double head = type.labels() > 0 ? 0 : label.height();
        List<UnbreakableBlock> slabs = new ArrayList<>();
        for (int i = 0; i < blank.lines(); i++) {
            boolean first = i == 0;
            double height = first ? Math.max(head + apart, label.height() + 1.5) : apart;
            slabs.add(UnbreakableBlock.of(height, first ? type.space(0.2) : 0, first ? blank.label() : "", (ink, y) -> {
                        if (first && !label.empty()) {
                            double up = type.labels() > 0 ? apart - label.baseline() : 0;
                            ink.tagged(tag, () -> label.draw(ink, type.left(), y + Math.max(0, up), PageStyle.QUIET));
                        }
                        LayoutContext.rule(
                                ink,
                                left,
                                type.left() + type.measure(),
                                y + (first ? head + apart : apart),
                                PageStyle.HAIR);
                    })
                    .tied(first && blank.lines() > 1));
        }
        return slabs;
    }
}
