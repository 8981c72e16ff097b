package tenterbook.documents;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.DrawObject;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.state.Concatenate;
import org.apache.pdfbox.contentstream.operator.state.Restore;
import org.apache.pdfbox.contentstream.operator.state.Save;
import org.apache.pdfbox.contentstream.operator.state.SetGraphicsStateParameters;
import org.apache.pdfbox.contentstream.operator.state.SetMatrix;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.apache.pdfbox.util.Matrix;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;
import tenterbook.typeset.Mm;

/** A document's PDF read back by other programs' code. */
public record ReadBack(byte[] pdf) {
    /** A letter, in millimetres from the page's upper left corner; its size in points. */
    public record Letter(String text, double left, double right, double baseline, double size) {}

    /** A picture: the page it stands on and its sides, in millimetres from the page's upper left corner. */
    public record Picture(int page, double left, double top, double width, double height, int pixels) {
        public double dpi() {
            return pixels / width * 25.4;
        }
    }

    /** Checked with veraPDF against its profile of that flavour of ISO 19005. */
    public ValidationResult checked(PDFAFlavour flavour) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        try (var parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
                var validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            return validator.validate(parser);
        }
    }

    public int pages() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return document.getNumberOfPages();
        }
    }

    /** Of one page, from 1, with every space a plain one and lines joined. */
    public String text(int page) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            return stripper.getText(document).replace('\u00a0', ' ').replaceAll("\\s+", " ");
        }
    }

    public String text() throws IOException {
        StringBuilder text = new StringBuilder();
        for (int page = 1; page <= pages(); page++) {
            text.append(text(page)).append(' ');
        }
        return text.toString();
    }

    public List<Letter> letters(int page) throws IOException {
        List<Letter> letters = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    positions.forEach(p -> letters.add(new Letter(
                            p.getUnicode(),
                            Mm.of(p.getXDirAdj()),
                            Mm.of(p.getXDirAdj() + p.getWidthDirAdj()),
                            Mm.of(p.getYDirAdj()),
                            p.getFontSizeInPt())));
                }
            };
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            stripper.getText(document);
        }
        return letters;
    }

    public List<Picture> pictures() throws IOException {
        List<Picture> pictures = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (int i = 0; i < document.getNumberOfPages(); i++) {
                new Pictures(i + 1, document.getPage(i), pictures).processPage(document.getPage(i));
            }
        }
        return pictures;
    }

    private static final class Pictures extends PDFStreamEngine {
        private final int number;
        private final PDPage page;
        private final List<Picture> found;

        Pictures(int number, PDPage page, List<Picture> found) {
            this.number = number;
            this.page = page;
            this.found = found;
            addOperator(new Concatenate(this));
            addOperator(new Save(this));
            addOperator(new Restore(this));
            addOperator(new SetMatrix(this));
            addOperator(new SetGraphicsStateParameters(this));
            addOperator(new DrawObject(this));
        }

        @Override
        protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
            if (operator.getName().equals("Do")
                    && getResources().getXObject((COSName) operands.get(0)) instanceof PDImageXObject image) {
                Matrix at = getGraphicsState().getCurrentTransformationMatrix();
                double height = page.getMediaBox().getHeight();
                found.add(new Picture(
                        number,
                        Mm.of(at.getTranslateX()),
                        Mm.of(height - at.getTranslateY() - at.getScalingFactorY()),
                        Mm.of(at.getScalingFactorX()),
                        Mm.of(at.getScalingFactorY()),
                        image.getWidth()));
            } else {
                super.processOperator(operator, operands);
            }
        }
    }

    /** Bookmarks in order, each indented by two spaces for each level. */
    public List<String> outline() throws IOException {
        List<String> titles = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDOutlineNode outline = document.getDocumentCatalog().getDocumentOutline();
            if (outline != null) {
                outline(outline, "", titles);
            }
        }
        return titles;
    }

    private static void outline(PDOutlineNode node, String indent, List<String> titles) {
        for (PDOutlineItem item : node.children()) {
            titles.add(indent + item.getTitle());
            outline(item, indent + "  ", titles);
        }
    }

    /** The structure tree's elements in order, each with its alternative text where it has one. */
    public List<String> structure() throws IOException {
        List<String> elements = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            structure(document.getDocumentCatalog().getStructureTreeRoot(), elements);
        }
        return elements;
    }

    private static void structure(PDStructureNode node, List<String> elements) {
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                String instead = element.getAlternateDescription();
                elements.add(element.getStructureType() + (instead == null ? "" : " " + instead));
                structure(element, elements);
            }
        }
    }
}
