package tenterbook.typeset;

import java.io.IOException;
import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/** The pictures of one document, each embedded once however often it is drawn. */
final class PdfImages {
    private final PDDocument document;
    private final Map<byte[], PDImageXObject> embedded = new IdentityHashMap<>();

    PdfImages(PDDocument document) {
        this.document = document;
    }

    PDImageXObject of(byte[] jpeg) throws IOException {
        PDImageXObject known = embedded.get(jpeg);
        if (known == null) {
            known = JPEGFactory.createFromByteArray(document, jpeg);
            embedded.put(jpeg, known);
        }
        return known;
    }
}
