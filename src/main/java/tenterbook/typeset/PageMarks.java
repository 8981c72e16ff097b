package tenterbook.typeset;

import java.io.IOException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/** What a page adds to its document besides ink: structure, outline, pictures. */
final class PageMarks {
    private final PDPage page;
    private final StructureTree structure;
    private final COSArray stretches;
    private final Outline outline;
    private final PdfImages pictures;

    /** @param structure null where the document is not tagged */
    PageMarks(PDPage page, StructureTree structure, Outline outline, PdfImages pictures) {
        this.page = page;
        this.structure = structure;
        this.stretches = structure == null ? null : structure.open(page);
        this.outline = outline;
        this.pictures = pictures;
    }

    boolean tagged() {
        return structure != null;
    }

    int mark(StructureTag tag) {
        return structure.mark(tag, page, stretches);
    }

    void bookmark(int level, String title, float y) {
        outline.add(level, title, page, y);
    }

    PDImageXObject picture(byte[] jpeg) throws IOException {
        return pictures.of(jpeg);
    }
}
