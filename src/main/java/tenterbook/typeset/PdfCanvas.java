package tenterbook.typeset;

import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.util.Matrix;

/**
 * Draws on one page. Lengths are millimetres from the upper left corner of the current origin; line weights are points.
 */
public final class PdfCanvas {
    private final PDPageContentStream page;
    private final EmbeddedTypefaces faces;
    private final PageMarks marks;
    private final double pageHeightMm;
    private final double left;
    private final double top;

    PdfCanvas(
            PDPageContentStream page,
            EmbeddedTypefaces faces,
            PageMarks marks,
            double pageHeightMm,
            double left,
            double top) {
        this.page = page;
        this.faces = faces;
        this.marks = marks;
        this.pageHeightMm = pageHeightMm;
        this.left = left;
        this.top = top;
    }

    /** The same page with another origin. */
    public PdfCanvas from(double x, double y) {
        return new PdfCanvas(page, faces, marks, pageHeightMm, left + x, top + y);
    }

    public LineBreaker setter() {
        return faces.setter();
    }

    /** What {@code drawing} draws belongs to {@code tag}. On paper that is not tagged this only draws. */
    public void tagged(StructureTag tag, Runnable drawing) {
        marked(() -> page.beginMarkedContent(COSName.getPDFName(tag.type()), marks.mark(tag)), drawing);
    }

    /** What {@code drawing} draws is no part of the text: a rule, a running head. */
    public void artifact(Runnable drawing) {
        marked(() -> page.beginMarkedContent(COSName.ARTIFACT), drawing);
    }

    private void marked(Drawing begin, Runnable drawing) {
        if (!marks.tagged()) {
            drawing.run();
            return;
        }
        drawn("marked content", begin);
        drawing.run();
        drawn("marked content", page::endMarkedContent);
    }

    /**
     * Adds a bookmark to the document's outline.
     *
     * @param level 1 for the outermost
     * @param y where it stands on the page
     */
    public void bookmark(int level, String title, double y) {
        marks.bookmark(level, title, y(y));
    }

    /** A whole picture as it is, drawn to the box. The same array drawn again is embedded once. */
    public void jpeg(byte[] jpeg, double x, double y, double width, double height) {
        drawn(
                "a photograph",
                () -> page.drawImage(
                        marks.picture(jpeg), x(x), y(y + height), (float) Mm.points(width), (float) Mm.points(height)));
    }

    /** A line of text with its first letter at {@code x} and its baseline at {@code y}. */
    public void text(TextLine line, double x, double y, PrintColour tone) {
        drawn("text", () -> {
            boolean says = line.style().tracking() != 0 || line.text().endsWith("\u00ad");
            if (says) {
                says(line.text());
            }
            page.beginText();
            fill(tone);
            page.setCharacterSpacing(
                    (float) (line.style().tracking() * line.style().size()));
            page.newLineAtOffset(x(x), y(y));
            for (TextLine.Run run : line.runs()) {
                page.setFont(faces.font(run.face()), (float) line.style().size());
                page.showTextWithPositioning(positioned(run));
            }
            page.endText();
            if (says) {
                page.endMarkedContent();
            }
        });
    }

    /**
     * The actual text of what follows, for readers that would take letterspacing for blanks or a hyphen for a letter (ISO
     * 32000-1, 14.9.4). The properties are written inline, for which PDFBox has no method.
     */
    @SuppressWarnings("deprecation")
    private void says(String text) throws IOException {
        StringBuilder hex = new StringBuilder("/Span <</ActualText <FEFF");
        text.chars().forEach(unit -> hex.append(String.format("%04X", unit)));
        page.appendRawCommands(hex.append(">>> BDC\n").toString());
    }

    /**
     * Draws with a transformation of the whole page, in millimetres from the page's upper left corner.
     *
     * @param transform as with y downwards
     */
    public void through(AffineTransform transform, Consumer<PdfCanvas> drawing) {
        double h = Mm.points(pageHeightMm);
        AffineTransform points = new AffineTransform(1, 0, 0, -1, 0, h);
        points.concatenate(new AffineTransform(
                transform.getScaleX(),
                transform.getShearY(),
                transform.getShearX(),
                transform.getScaleY(),
                Mm.points(transform.getTranslateX()),
                Mm.points(transform.getTranslateY())));
        points.concatenate(new AffineTransform(1, 0, 0, -1, 0, h));
        drawn("a transformation", () -> {
            page.saveGraphicsState();
            page.transform(new Matrix(points));
        });
        drawing.accept(this);
        drawn("a transformation", page::restoreGraphicsState);
    }

    /** Each line flush left at {@code x}; the top of the column at {@code y}. */
    public void column(TextColumn.SetColumn column, double x, double y, PrintColour tone) {
        for (TextColumn.Placed placed : column.lines()) {
            text(placed.line(), x, y + Mm.of(placed.baseline()), tone);
        }
    }

    private static Object[] positioned(TextLine.Run run) {
        List<Object> parts = new ArrayList<>();
        StringBuilder text = new StringBuilder();
        int[] points = run.text().codePoints().toArray();
        for (int i = 0; i < points.length; i++) {
            text.appendCodePoint(points[i]);
            if (run.kerns()[i] != 0) {
                parts.add(text.toString());
                parts.add((float) -run.kerns()[i]);
                text.setLength(0);
            }
        }
        if (text.length() > 0) {
            parts.add(text.toString());
        }
        return parts.toArray();
    }

    public void rectangle(double x, double y, double width, double height, PrintColour tone) {
        drawn("a rectangle", () -> {
            fill(tone);
            page.addRect(x(x), y(y + height), (float) Mm.points(width), (float) Mm.points(height));
            page.fill();
        });
    }

    /**
     * Many runs of square cells as one path, so that neighbours show no seam.
     *
     * @param x of the grid's left side
     * @param y of the grid's lower side
     * @param cell side of one cell, in mm
     * @param runs column, row from below, and length of each
     */
    public void cells(double x, double y, double cell, List<int[]> runs, PrintColour tone) {
        drawn("cells", () -> {
            page.saveGraphicsState();
            fill(tone);
            float side = (float) Mm.points(cell);
            page.transform(new Matrix(side, 0, 0, side, x(x), y(y)));
            for (int[] run : runs) {
                page.addRect(run[0], run[1], run[2], 1);
            }
            page.fill();
            page.restoreGraphicsState();
        });
    }

    /** Rotates by 90° about a point, so that text runs upwards. */
    public void upwards(double x, double y, Consumer<PdfCanvas> drawing) {
        AffineTransform turned = AffineTransform.getTranslateInstance(left + x, top + y);
        turned.rotate(-Math.PI / 2);
        through(turned, ink -> drawing.accept(new PdfCanvas(page, faces, marks, pageHeightMm, 0, 0)));
    }

    public void line(double x1, double y1, double x2, double y2, double weight, PrintColour tone) {
        drawn("a line", () -> {
            stroke(tone, weight);
            page.moveTo(x(x1), y(y1));
            page.lineTo(x(x2), y(y2));
            page.stroke();
        });
    }

    public void circle(double x, double y, double radius, double weight, PrintColour tone) {
        drawn("a circle", () -> {
            stroke(tone, weight);
            round(x, y, radius);
            page.closeAndStroke();
        });
    }

    /** A drawn figure, stroked with round ends; see {@link Figure}. */
    public void figure(double weight, PrintColour tone, Consumer<Figure> drawing) {
        drawn("a figure", () -> {
            stroke(tone, weight);
            page.setLineCapStyle(1);
            page.setLineJoinStyle(1);
            drawing.accept(new Figure());
            page.stroke();
            page.setLineCapStyle(0);
            page.setLineJoinStyle(0);
        });
    }

    /** The pen of a figure, in millimetres as everything here. */
    public final class Figure {
        private Figure() {}

        public Figure move(double toX, double toY) {
            drawn("a figure", () -> page.moveTo(x(toX), y(toY)));
            return this;
        }

        public Figure line(double toX, double toY) {
            drawn("a figure", () -> page.lineTo(x(toX), y(toY)));
            return this;
        }

        /** A cubic curve by two control points. */
        public Figure curve(double x1, double y1, double x2, double y2, double toX, double toY) {
            drawn("a figure", () -> page.curveTo(x(x1), y(y1), x(x2), y(y2), x(toX), y(toY)));
            return this;
        }

        public Figure close() {
            drawn("a figure", page::closePath);
            return this;
        }
    }

    /** A filled circle. */
    public void disc(double x, double y, double radius, PrintColour tone) {
        drawn("a disc", () -> {
            fill(tone);
            round(x, y, radius);
            page.fill();
        });
    }

    /** The outline of a circle as four curves. */
    private void round(double x, double y, double radius) throws IOException {
        double k = 0.5522847498 * radius;
        page.moveTo(x(x + radius), y(y));
        page.curveTo(x(x + radius), y(y + k), x(x + k), y(y + radius), x(x), y(y + radius));
        page.curveTo(x(x - k), y(y + radius), x(x - radius), y(y + k), x(x - radius), y(y));
        page.curveTo(x(x - radius), y(y - k), x(x - k), y(y - radius), x(x), y(y - radius));
        page.curveTo(x(x + k), y(y - radius), x(x + radius), y(y - k), x(x + radius), y(y));
    }

    private void fill(PrintColour tone) throws IOException {
        if (tone.neutral()) {
            page.setNonStrokingColor(tone.red() / 255f);
        } else {
            page.setNonStrokingColor(tone.red() / 255f, tone.green() / 255f, tone.blue() / 255f);
        }
    }

    private void stroke(PrintColour tone, double weight) throws IOException {
        if (tone.neutral()) {
            page.setStrokingColor(tone.red() / 255f);
        } else {
            page.setStrokingColor(tone.red() / 255f, tone.green() / 255f, tone.blue() / 255f);
        }
        page.setLineWidth((float) weight);
    }

    private float x(double mm) {
        return (float) Mm.points(left + mm);
    }

    private float y(double mm) {
        return (float) Mm.points(pageHeightMm - top - mm);
    }

    private interface Drawing {
        void draw() throws IOException;
    }

    private static void drawn(String what, Drawing drawing) {
        try {
            drawing.draw();
        } catch (IOException e) {
            throw new UncheckedIOException("Drawing %s on a page failed".formatted(what), e);
        }
    }
}
