package tenterbook.labelling.paper;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.PrintSettings;
import tenterbook.ledger.file.Progress;
import tenterbook.typeset.Mm;

/** A printed document read back. */
record Printed(byte[] bytes) {
    static final Clock CLOCK = Clock.fixed(Instant.parse("2024-06-01T10:00:00Z"), ZoneOffset.UTC);

    /** A letter as read back, in millimetres from the page's upper left corner. */
    record Letter(String text, double left, double right, double baseline, double size) {}

    /** A straight stroke, in millimetres from the lower left corner. */
    record Stroke(double x1, double y1, double x2, double y2) {
        double length() {
            return Math.hypot(x2 - x1, y2 - y1);
        }

        boolean isMark() {
            return Math.abs(length() - 2.3) < 0.01 && (Math.abs(x1 - x2) < 0.01 || Math.abs(y1 - y2) < 0.01);
        }
    }

    static Printed of(PrintSettings request, PieceFacts... facts) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        LabelPaper.pdf(List.of(facts), request, out, CLOCK, Progress.UNWATCHED);
        return new Printed(out.toByteArray());
    }

    String text() throws IOException {
        try (PDDocument document = Loader.loadPDF(bytes)) {
            return new PDFTextStripper()
                    .getText(document)
                    .replace('\u00a0', ' ')
                    .replaceAll("\\s+", " ");
        }
    }

    List<Letter> letters(int page) throws IOException {
        List<Letter> letters = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(bytes)) {
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    positions.forEach(p -> letters.add(p.getDir() == 0 ? level(p) : upward(p)));
                }
            };
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            stripper.getText(document);
        }
        return letters;
    }

    private static Letter level(TextPosition p) {
        return new Letter(
                p.getUnicode(),
                Mm.of(p.getXDirAdj()),
                Mm.of(p.getXDirAdj() + p.getWidthDirAdj()),
                Mm.of(p.getYDirAdj()),
                p.getFontSizeInPt());
    }

    /** A letter of a line that runs up the page: it stands to the left of its base line, as high as its size. */
    private static Letter upward(TextPosition p) {
        return new Letter(
                p.getUnicode(),
                Mm.of(p.getX() - p.getFontSizeInPt()),
                Mm.of(p.getX()),
                Mm.of(p.getY()),
                p.getFontSizeInPt());
    }

    List<Stroke> strokes(int page) throws IOException {
        List<Stroke> strokes = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(bytes)) {
            List<Double> numbers = new ArrayList<>();
            double[] from = new double[2];
            for (Object token : new PDFStreamParser(document.getPage(page - 1)).parse()) {
                if (token instanceof COSNumber number) {
                    numbers.add(Mm.of(number.floatValue()));
                } else if (token instanceof Operator operator) {
                    if (operator.getName().equals("m")) {
                        from = new double[] {numbers.get(0), numbers.get(1)};
                    } else if (operator.getName().equals("l")) {
                        strokes.add(new Stroke(from[0], from[1], numbers.get(0), numbers.get(1)));
                    }
                    numbers.clear();
                }
            }
        }
        return strokes;
    }

    BufferedImage image(int page, double dpi) throws IOException {
        try (PDDocument document = Loader.loadPDF(bytes)) {
            return new PDFRenderer(document).renderImageWithDPI(page - 1, (float) dpi);
        }
    }
}
