package tenterbook.documents.layout;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import tenterbook.documents.Block;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.StructureTag;
import tenterbook.typeset.TextLine;
import tenterbook.words.Message;

/** Drawings for the bench: the layers of the opened cloth, and the holes of a board. */
final class PlanBlocks {
    private static final PrintColour TURNED = new PrintColour(232, 227, 218);
    private static final double MOST_WIDE = 120;
    private static final double MOST_HIGH = 48;
    private static final double MOST_PANEL = 18;
    private static final double LINE = 0.4;
    private static final double HOLE = 1.2;

    private final LayoutContext desk;
    private final PageStyle type;

    PlanBlocks(LayoutContext desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    List<UnbreakableBlock> layers(Block.Layers layers) {
        int columns = layers.columns();
        int rows = layers.panels().size() / columns;
        double x = type.main();
        double width = Math.min(MOST_WIDE, type.mainMeasure());
        double cell = Math.min(MOST_PANEL, Math.min(width / columns, MOST_HIGH / rows / 0.75));
        double high = cell * 0.75;
        List<LineLayout.Set> numbers = layers.panels().stream()
                .map(panel -> desk.set(Integer.toString(panel.layer()), type.small(), cell))
                .toList();
        StructureTag figure = desk.document()
                .figure(Message.of("document.layers-drawn", "rows", rows, "columns", columns)
                        .onPaper());
        return drawn(
                rows * high,
                layers.caption(),
                (ink, y) -> ink.tagged(figure, () -> {
                    for (int i = 0; i < layers.panels().size(); i++) {
                        double left = x + i % columns * cell;
                        double top = y + i / columns * high;
                        panel(ink, layers.panels().get(i), left, top, cell, high);
                        if (cell > 5) {
                            LineLayout.Set number = numbers.get(i);
                            number.draw(ink, left + 1.2, top + Math.max(0, high * 0.08), PageStyle.INK);
                        }
                    }
                }));
    }

    /** An angle with arrows along both sides: which way each lies shows how the panel is mirrored. */
    private static void panel(PdfCanvas ink, Block.Panel panel, double left, double top, double wide, double high) {
        if (!panel.faceUp()) {
            ink.rectangle(left, top, wide, high, TURNED);
        }
        box(ink, left, top, wide, high);
        double across = panel.mirroredWidth() ? -1 : 1;
        double along = panel.mirroredLength() ? -1 : 1;
        double middleX = left + wide / 2;
        double middleY = top + high / 2;
        double x = middleX - across * wide * 0.3;
        double y = middleY + along * high * 0.32;
        double endX = x + across * wide * 0.42;
        double endY = y - along * high * 0.5;
        double tip = Math.min(1.2, wide * 0.08);
        ink.line(x, y, endX, y, LINE, PageStyle.QUIET);
        ink.line(endX, y, endX - across * tip, y - tip * 0.8, LINE, PageStyle.QUIET);
        ink.line(endX, y, endX - across * tip, y + tip * 0.8, LINE, PageStyle.QUIET);
        ink.line(x, y, x, endY, LINE, PageStyle.QUIET);
        ink.line(x, endY, x - tip * 0.8, endY + along * tip, LINE, PageStyle.QUIET);
        ink.line(x, endY, x + tip * 0.8, endY + along * tip, LINE, PageStyle.QUIET);
    }

    List<UnbreakableBlock> holes(Block.Holes holes) {
        double x = type.main();
        double scale = Math.min(Math.min(MOST_WIDE, type.mainMeasure()) / holes.wide(), MOST_HIGH / holes.high());
        List<LineLayout.Set> names = holes.holes().stream()
                .map(hole -> desk.set(hole.name(), type.small(), 20))
                .toList();
        StructureTag figure = desk.document()
                .figure(Message.of(
                                "document.holes-drawn", "holes", holes.holes().size())
                        .onPaper());
        return drawn(
                holes.high() * scale,
                holes.caption(),
                (ink, y) -> ink.tagged(figure, () -> {
                    box(ink, x, y, holes.wide() * scale, holes.high() * scale);
                    List<Rectangle2D> taken = new ArrayList<>();
                    for (int i = 0; i < holes.holes().size(); i++) {
                        Block.HolePlace hole = holes.holes().get(i);
                        double holeX = x + hole.across() * scale;
                        double holeY = y + hole.down() * scale;
                        ink.circle(holeX, holeY, HOLE, LINE, PageStyle.INK);
                        Rectangle2D place = free(names.get(i), holeX, holeY, taken);
                        taken.add(place);
                        names.get(i).draw(ink, place.getX(), place.getY(), PageStyle.INK);
                    }
                }));
    }

    /** Beside, above or below a hole, where no other name stands; beside it where every place is taken. */
    private static Rectangle2D free(LineLayout.Set name, double x, double y, List<Rectangle2D> taken) {
        double wide =
                Mm.of(name.lines().stream().mapToDouble(TextLine::width).max().orElse(0));
        double high = name.baseline();
        double apart = HOLE + 0.5;
        List<Rectangle2D> places = List.of(
                new Rectangle2D.Double(x + apart, y - high * 0.65, wide, high),
                new Rectangle2D.Double(x - apart - wide, y - high * 0.65, wide, high),
                new Rectangle2D.Double(x - wide / 2, y - apart - high, wide, high),
                new Rectangle2D.Double(x - wide / 2, y + apart - high * 0.2, wide, high));
        return places.stream()
                .filter(place -> taken.stream().noneMatch(place::intersects))
                .findFirst()
                .orElse(places.get(0));
    }

    private List<UnbreakableBlock> drawn(double high, String caption, UnbreakableBlock.Drawing drawing) {
        LineLayout.Set words = desk.set(caption, type.small(), type.mainMeasure());
        StructureTag tag = desk.document().child("Caption");
        return List.of(UnbreakableBlock.of(high + 1.5 + words.height(), type.space(0.6), caption, (ink, y) -> {
            drawing.draw(ink, y);
            if (!words.empty()) {
                ink.tagged(tag, () -> words.draw(ink, type.main(), y + high + 1.2, PageStyle.QUIET));
            }
        }));
    }

    private static void box(PdfCanvas ink, double left, double top, double wide, double high) {
        ink.line(left, top, left + wide, top, LINE, PageStyle.HAIR);
        ink.line(left, top + high, left + wide, top + high, LINE, PageStyle.HAIR);
        ink.line(left, top, left, top + high, LINE, PageStyle.HAIR);
        ink.line(left + wide, top, left + wide, top + high, LINE, PageStyle.HAIR);
    }
}
