package tenterbook.documents.layout;

import java.util.List;
import tenterbook.colour.space.Srgb;
import tenterbook.documents.Block;
import tenterbook.facts.PieceColour;
import tenterbook.measure.NumberWords;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.StructureTag;
import tenterbook.words.Message;

/** Bands of colour. */
final class PaletteBlocks {
    private final LayoutContext desk;
    private final PageStyle type;

    PaletteBlocks(LayoutContext desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    /** The colours as one strip, each as wide as its share, and below it their names. */
    List<UnbreakableBlock> palette(Block.Palette palette) {
        List<PieceColour> colours = palette.colours();
        double x = type.main();
        double width = type.mainMeasure();
        boolean shares = colours.stream().allMatch(c -> c.share() != null)
                && colours.stream().anyMatch(c -> c.share() > 0);
        double sum = shares ? colours.stream().mapToDouble(PieceColour::share).sum() : colours.size();
        double high = type.space(1.5);
        int across = Math.max(1, Math.min(3, (int) (width / 38)));
        double cell = (width - 4 * (across - 1)) / across;
        double box = Mm.of(type.small().size()) * 0.8;
        List<LineLayout.Set> names = colours.stream()
                .map(c -> desk.set(named(c, shares), type.small(), cell - box - 1.6))
                .toList();
        int rows = (colours.size() + across - 1) / across;
        double[] tops = new double[rows + 1];
        tops[0] = high + 1.4;
        for (int r = 0; r < rows; r++) {
            double tall = 0;
            for (int i = r * across; i < Math.min(colours.size(), (r + 1) * across); i++) {
                tall = Math.max(tall, names.get(i).height());
            }
            tops[r + 1] = tops[r] + tall;
        }
        StructureTag list = desk.document().child("L");
        List<StructureTag> bodies =
                colours.stream().map(c -> list.child("LI").child("LBody")).toList();
        return List.of(UnbreakableBlock.of(tops[rows], type.space(0.6), "", (ink, y) -> {
            ink.artifact(() -> {
                double from = x;
                for (PieceColour colour : colours) {
                    double wide = width * (shares ? colour.share() : 1) / sum;
                    ink.rectangle(from, y, shares ? wide : wide - 0.6, high, tone(colour));
                    from += wide;
                }
            });
            for (int i = 0; i < colours.size(); i++) {
                double left = x + (i % across) * (cell + 4);
                double top = y + tops[i / across];
                LineLayout.Set name = names.get(i);
                PrintColour tone = tone(colours.get(i));
                ink.artifact(() -> ink.rectangle(left, top + name.baseline() - box, box, box, tone));
                ink.tagged(bodies.get(i), () -> name.draw(ink, left + box + 1.6, top, PageStyle.INK));
            }
        }));
    }

    private static String named(PieceColour colour, boolean shares) {
        return shares
                ? Message.of(
                                "document.colour-share",
                                "colour",
                                colour.name(),
                                "share",
                                NumberWords.percent(colour.share(), 0))
                        .onPaper()
                : colour.name();
    }

    private static PrintColour tone(PieceColour colour) {
        Srgb screen = colour.colour().srgb();
        return new PrintColour(screen.red(), screen.green(), screen.blue());
    }
}
