package tenterbook.label.document.set;

import java.util.ArrayList;
import java.util.List;
import tenterbook.label.document.Block;
import tenterbook.label.layout.Tag;

/** Room for a hand: signatures, and lines to write on. */
final class HandBlocks {
    private static final double GUTTER = 10;
    private static final double TO_SIGN = 13;

    private final Desk desk;
    private final Type type;

    HandBlocks(Desk desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    List<Slab> signatures(Block.Signatures signatures) {
        List<Slab> slabs = new ArrayList<>();
        double width = (type.measure() - GUTTER) / 2;
        List<String> who = signatures.who();
        for (int i = 0; i < who.size(); i += 2) {
            List<Words.Set> pair = who.subList(i, Math.min(i + 2, who.size())).stream()
                    .map(each -> desk.set(each, type.small(), width))
                    .toList();
            List<Tag> tags =
                    pair.stream().map(set -> desk.document().child("P")).toList();
            double words = pair.stream().mapToDouble(Words.Set::height).max().orElse(0);
            slabs.add(Slab.of(TO_SIGN + 1 + words, type.space(0.5), "", (ink, y) -> {
                        for (int k = 0; k < pair.size(); k++) {
                            double x = type.left() + k * (width + GUTTER);
                            Words.Set set = pair.get(k);
                            Desk.rule(ink, x, x + width, y + TO_SIGN, Type.INK);
                            ink.tagged(tags.get(k), () -> set.draw(ink, x, y + TO_SIGN + 0.6, Type.QUIET));
                        }
                    })
                    .tied(i + 2 < who.size()));
        }
        return slabs;
    }

    List<Slab> blank(Block.Blank blank) {
        double apart = Math.max(8, type.space(1.6));
        double left = type.labels() > 0 ? type.main() : type.left();
        Words.Set label = desk.set(blank.label(), type.label(), type.labels() > 0 ? type.labels() : type.measure());
        Tag tag = desk.document().child("P");
        double head = type.labels() > 0 ? 0 : label.height();
        List<Slab> slabs = new ArrayList<>();
        for (int i = 0; i < blank.lines(); i++) {
            boolean first = i == 0;
            double height = first ? Math.max(head + apart, label.height() + 1.5) : apart;
            slabs.add(Slab.of(height, first ? type.space(0.2) : 0, first ? blank.label() : "", (ink, y) -> {
                        if (first && !label.empty()) {
                            double up = type.labels() > 0 ? apart - label.baseline() : 0;
                            ink.tagged(tag, () -> label.draw(ink, type.left(), y + Math.max(0, up), Type.QUIET));
                        }
                        Desk.rule(
                                ink, left, type.left() + type.measure(), y + (first ? head + apart : apart), Type.HAIR);
                    })
                    .tied(first && blank.lines() > 1));
        }
        return slabs;
    }
}
