package tenterbook.documents.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.Srgb;
import tenterbook.documents.Block;
import tenterbook.facts.PieceColour;
import tenterbook.labelling.paper.SquareCode;
import tenterbook.measure.NumberWords;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.StructureTag;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;
import tenterbook.words.Message;

/** Photographs with their marks, bands of colour, square codes. */
final class PictureBlocks {
    private static final double GUTTER = 5;
    /** Radius of a mark's number, its white rim included. */
    private static final double DISC = 2.3;

    private static final PrintColour WHITE = new PrintColour(255, 255, 255);

    private final LayoutContext desk;
    private final PageStyle type;

    PictureBlocks(LayoutContext desk) {
        this.desk = desk;
        this.type = desk.type();
    }

    /** Photographs that stand side by side, as one slab; a marked one has its legend beside or below it. */
    List<UnbreakableBlock> photographs(List<Block.Photograph> row) {
        int across = switch (row.get(0).extent()) {
            case WHOLE -> 1;
            case HALF -> 2;
            case THIRD -> 3;
        };
        boolean marked = across == 1 && !row.get(0).marks().isEmpty();
        double width = marked ? type.measure() * 0.62 : (type.measure() - GUTTER * (across - 1)) / across;
        double most = type.tallest(
                row.get(0).extent(),
                row.stream().anyMatch(photo -> !photo.marks().isEmpty()));
        List<Framed> framed = new ArrayList<>();
        for (Block.Photograph photo : row) {
            framed.add(framed(photo, width, most));
        }
        double tallest = framed.stream().mapToDouble(f -> f.height).max().orElse(0);
        double whole = framed.stream()
                .mapToDouble(f -> f.height + f.caption.height() + 1.2)
                .max()
                .orElse(0);
        List<UnbreakableBlock> slabs = new ArrayList<>();
        List<Block.Mark> marks =
                row.stream().flatMap(photo -> photo.marks().stream()).toList();
        double beside = marked ? framed.get(0).width + GUTTER : 0;
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
                    for (Framed each : framed) {
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
                ink.tagged(label, () -> number(ink, mark.number(), x + 2.1, y + 2.2));
                ink.tagged(body, () -> set.draw(ink, x + inset, y, PageStyle.INK));
            }));
        }
        return slabs;
    }

    private void number(PdfCanvas ink, int number, double x, double y) {
        ink.disc(x, y, DISC, WHITE);
        ink.disc(x, y, 2.05, PageStyle.HEED);
        TextStyle style = TextStyle.of(type.h3().face(), 7.6, 9, 7.6);
        TextLine line = desk.words().line(Integer.toString(number), style);
        ink.text(line, x - Mm.of(line.width()) / 2, y + Mm.of(7.6 * 0.66) / 2, WHITE);
    }

    private Framed framed(Block.Photograph photo, double width, double most) {
        Optional<PrintImages.Shot> shot = desk.shots().in(photo.photo(), width, most);
        double high = shot.map(PrintImages.Shot::height).orElse(Math.min(most, width * 0.4));
        double wide = shot.map(PrintImages.Shot::width).orElse(width);
        String caption = shot.isPresent()
                ? photo.caption()
                : Message.of(
                                "document.photograph-missing",
                                "caption",
                                photo.caption(),
                                "digits",
                                photo.photo().hex().substring(0, 12))
                        .inEnglish()
                        .strip();
        return new Framed(
                photo,
                shot.orElse(null),
                wide,
                high,
                desk.set(caption, type.small(), width),
                desk.document()
                        .figure(
                                photo.instead().isEmpty()
                                        ? Message.of("document.photograph").inEnglish()
                                        : photo.instead()),
                desk.document().child("Caption"));
    }

    /** A photograph with its caption below; neighbours begin level. */
    private final class Framed {
        private final Block.Photograph photo;
        private final PrintImages.@Nullable Shot shot;
        private final double width;
        private final double height;
        private final LineLayout.Set caption;
        private final StructureTag figure;
        private final StructureTag below;

        /** The area's sides: dark on a wider white, so that it shows on any cloth. */
        private void outline(PdfCanvas ink, Block.Mark mark, double x, double y) {
            double left = x + mark.across() * width;
            double right = x + mark.right() * width;
            double upper = y + mark.down() * height;
            double lower = y + mark.bottom() * height;
            frame(ink, left, upper, right, lower, 2.6, WHITE);
            frame(ink, left, upper, right, lower, 1.2, PageStyle.HEED);
        }

        private void frame(
                PdfCanvas ink, double left, double upper, double right, double lower, double weight, PrintColour tone) {
            ink.figure(
                    weight,
                    tone,
                    path -> path.move(left, upper)
                            .line(right, upper)
                            .line(right, lower)
                            .line(left, lower)
                            .close());
        }

        /** On its point, or at the upper left corner of its area, where it stays on the picture. */
        private void numbered(PdfCanvas ink, Block.Mark mark, double x, double y) {
            double across = x + mark.across() * width;
            double down = y + mark.down() * height;
            if (mark.area()) {
                across = Math.max(across, x + DISC);
                down = Math.max(down, y + DISC);
            }
            number(ink, mark.number(), across, down);
        }

        Framed(
                Block.Photograph photo,
                PrintImages.@Nullable Shot shot,
                double width,
                double height,
                LineLayout.Set caption,
                StructureTag figure,
                StructureTag below) {
            this.photo = photo;
            this.shot = shot;
            this.width = width;
            this.height = height;
            this.caption = caption;
            this.figure = figure;
            this.below = below;
        }

        void draw(PdfCanvas ink, double x, double y) {
            double top = y;
            if (shot != null) {
                ink.tagged(figure, () -> {
                    ink.jpeg(shot.jpeg(), x, top, width, height);
                    // Numbers above all outlines, so that none is crossed by another's.
                    photo.marks().stream().filter(Block.Mark::area).forEach(mark -> outline(ink, mark, x, top));
                    photo.marks().forEach(mark -> numbered(ink, mark, x, top));
                });
            } else {
                ink.artifact(() -> {
                    ink.line(x, top, x + width, top, PageStyle.HAIRLINE, PageStyle.HAIR);
                    ink.line(x, top + height, x + width, top + height, PageStyle.HAIRLINE, PageStyle.HAIR);
                });
            }
            if (!caption.empty()) {
                ink.tagged(below, () -> caption.draw(ink, x, y + height + 1.2, PageStyle.QUIET));
            }
        }
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
                                NumberWords.percent(colour.share(), 0, NumberWords.PercentSign.CLOSED_UP))
                        .inEnglish()
                : colour.name();
    }

    private static PrintColour tone(PieceColour colour) {
        Srgb screen = colour.colour().srgb();
        return new PrintColour(screen.red(), screen.green(), screen.blue());
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
                        .inEnglish());
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
