package tenterbook.documents.layout;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.documents.Block;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.StructureTag;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;
import tenterbook.words.Message;

/**
 * A photograph with its caption below; neighbours begin level. Lengths are in millimetres.
 *
 * @param shot null where the photograph is not at hand, and then two lines stand in its place
 * @param figure what the picture is tagged as
 * @param captionWidth in which the caption is set
 * @param below what the caption is tagged as
 */
record FramedPhotograph(
        LayoutContext desk,
        Block.Photograph photo,
        PrintImages.@Nullable Shot shot,
        LineLayout.Set caption,
        double captionWidth,
        StructureTag figure,
        StructureTag below,
        double width,
        double height) {
    /** Radius of a mark's number, its white rim included. */
    private static final double DISC = 2.3;

    private static final double ABOVE_CAPTION = 1.2;
    private static final double ABOVE_BAR = 2;

    /** Thickness of a scale bar. */
    private static final double BAR = 1.6;

    /** A caption below a narrow picture is as wide as this. */
    private static final double LEAST_CAPTION = 70;

    private static final PrintColour WHITE = new PrintColour(255, 255, 255);

    /** @param most height of the picture, at most */
    static FramedPhotograph of(Block.Photograph photo, double width, double most, LayoutContext desk) {
        Optional<PrintImages.Shot> shot = desk.shots().in(photo.photo(), width, most);
        String caption = shot.isPresent() ? photo.caption() : missing(photo);
        String instead =
                photo.instead().isEmpty() ? Message.of("document.photograph").onPaper() : photo.instead();
        double beneath = photo.extent() == Block.Extent.LARGE
                ? Math.min(
                        width,
                        Math.max(
                                LEAST_CAPTION, shot.map(PrintImages.Shot::width).orElse(width)))
                : width;
        return new FramedPhotograph(
                desk,
                photo,
                shot.orElse(null),
                desk.set(caption, desk.type().small(), beneath),
                beneath,
                desk.document().figure(instead),
                desk.document().child("Caption"),
                shot.map(PrintImages.Shot::width).orElse(width),
                shot.map(PrintImages.Shot::height).orElse(Math.min(most, width * 0.4)));
    }

    private static String missing(Block.Photograph photo) {
        return Message.of(
                        "document.photograph-missing",
                        "caption",
                        photo.caption(),
                        "digits",
                        photo.photo().hex().substring(0, 12))
                .onPaper()
                .strip();
    }

    double heightWithCaption() {
        return height + barHeight() + caption.height() + ABOVE_CAPTION;
    }

    double widthWithCaption() {
        return Math.max(width, captionWidth);
    }

    /** A scale without its picture would measure nothing. */
    private double barHeight() {
        return photo.scale() == null || shot == null ? 0 : ABOVE_BAR + BAR + ABOVE_CAPTION;
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
        if (barHeight() > 0) {
            bar(ink, photo.scale(), x, y + height + ABOVE_BAR);
        }
        if (!caption.empty()) {
            ink.tagged(below, () -> caption.draw(ink, x, y + height + barHeight() + ABOVE_CAPTION, PageStyle.QUIET));
        }
    }

    /** A bar of two halves, the first filled, and its length at the right; tagged with the caption's words. */
    private void bar(PdfCanvas ink, Block.ScaleBar scale, double x, double y) {
        double length = scale.part() * width;
        ink.artifact(() -> {
            ink.rectangle(x, y, length / 2, BAR, PageStyle.INK);
            ink.figure(
                    PageStyle.HAIRLINE * 2,
                    PageStyle.INK,
                    path -> path.move(x, y)
                            .line(x + length, y)
                            .line(x + length, y + BAR)
                            .line(x, y + BAR)
                            .close());
        });
        TextStyle style = desk.type().small();
        TextLine line = desk.words().line(scale.length(), style);
        ink.tagged(
                below,
                () -> ink.text(line, x + length + 2, y + BAR / 2 + Mm.of(style.size() * 0.66) / 2, PageStyle.INK));
    }

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
        number(desk, ink, mark.number(), across, down);
    }

    /** A mark's number on a white rim, its middle at {@code x}, {@code y}. */
    static void number(LayoutContext desk, PdfCanvas ink, int number, double x, double y) {
        ink.disc(x, y, DISC, WHITE);
        ink.disc(x, y, 2.05, PageStyle.HEED);
        TextStyle style = TextStyle.of(desk.type().h3().face(), 7.6, 9, 7.6);
        TextLine line = desk.words().line(Integer.toString(number), style);
        ink.text(line, x - Mm.of(line.width()) / 2, y + Mm.of(7.6 * 0.66) / 2, WHITE);
    }
}
