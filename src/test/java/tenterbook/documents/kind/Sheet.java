package tenterbook.documents.kind;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.DrawObject;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.state.Concatenate;
import org.apache.pdfbox.contentstream.operator.state.Restore;
import org.apache.pdfbox.contentstream.operator.state.Save;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.apache.pdfbox.util.Matrix;
import tenterbook.typeset.Mm;

/** A page read back: where its first picture and its letters stand, and closed outlines,, in millimetres from the upper left. */
record Sheet(int number, Box picture, List<Glyph> glyphs, List<Box> outlines) {
    record Box(double left, double top, double width, double height) {
        boolean holds(double x, double y) {
            return x > left && x < left + width && y > top && y < top + height;
        }
    }

    record Glyph(String text, double middle, double baseline) {}

    /** The first page with a picture on it. */
    static Sheet withPicture(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (int i = 0; i < document.getNumberOfPages(); i++) {
                List<Box> pictures = pictures(document.getPage(i));
                if (!pictures.isEmpty()) {
                    return new Sheet(i + 1, pictures.get(0), glyphs(document, i + 1), outlines(document.getPage(i)));
                }
            }
        }
        throw new AssertionError("No page has a picture");
    }

    private static List<Box> pictures(PDPage page) throws IOException {
        List<Box> boxes = new ArrayList<>();
        double high = page.getMediaBox().getHeight();
        PDFStreamEngine engine = new PDFStreamEngine() {};
        engine.addOperator(new Concatenate(engine));
        engine.addOperator(new Save(engine));
        engine.addOperator(new Restore(engine));
        engine.addOperator(new DrawObject(engine) {
            @Override
            public void process(Operator operator, List<COSBase> operands) throws IOException {
                if (getContext().getResources().isImageXObject((COSName) operands.get(0))) {
                    Matrix at = getContext().getGraphicsState().getCurrentTransformationMatrix();
                    boxes.add(new Box(
                            Mm.of(at.getTranslateX()),
                            Mm.of(high - at.getTranslateY() - at.getScalingFactorY()),
                            Mm.of(at.getScalingFactorX()),
                            Mm.of(at.getScalingFactorY())));
                }
            }
        });
        engine.processPage(page);
        return boxes;
    }

    /** Closed paths of four corners, as they stand in the page's own content. */
    private static List<Box> outlines(PDPage page) throws IOException {
        List<Box> boxes = new ArrayList<>();
        List<double[]> corners = new ArrayList<>();
        List<Double> numbers = new ArrayList<>();
        double high = page.getMediaBox().getHeight();
        for (Object token : new PDFStreamParser(page).parse()) {
            if (token instanceof COSNumber number) {
                numbers.add((double) number.floatValue());
                continue;
            }
            String name = token instanceof Operator operator ? operator.getName() : "";
            if (name.equals("m") || name.equals("l")) {
                if (name.equals("m")) {
                    corners.clear();
                }
                corners.add(new double[] {Mm.of(numbers.get(0)), Mm.of(high - numbers.get(1))});
            } else if (name.equals("h") && corners.size() == 4) {
                double[] first = corners.get(0);
                double[] across = corners.get(2);
                boxes.add(new Box(first[0], first[1], across[0] - first[0], across[1] - first[1]));
            }
            numbers.clear();
        }
        return boxes;
    }

    private static List<Glyph> glyphs(PDDocument document, int number) throws IOException {
        List<Glyph> glyphs = new ArrayList<>();
        PDFTextStripper stripper = new PDFTextStripper() {
            @Override
            protected void writeString(String text, List<TextPosition> positions) {
                positions.forEach(p -> glyphs.add(new Glyph(
                        p.getUnicode(), Mm.of(p.getXDirAdj() + p.getWidthDirAdj() / 2), Mm.of(p.getYDirAdj()))));
            }
        };
        stripper.setStartPage(number);
        stripper.setEndPage(number);
        stripper.getText(document);
        return glyphs;
    }

    /** The digits that stand on a picture. */
    Map<String, Glyph> numbersOn(Box box) {
        Map<String, Glyph> numbers = new TreeMap<>();
        glyphs.stream()
                .filter(glyph -> glyph.text.matches("\\d") && box.holds(glyph.middle, glyph.baseline))
                .forEach(glyph -> numbers.put(glyph.text, glyph));
        return numbers;
    }
}
