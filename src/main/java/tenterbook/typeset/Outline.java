package tenterbook.typeset;

import java.util.ArrayDeque;
import java.util.Deque;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;

/** The bookmarks of a document, in the order in which they were drawn. */
final class Outline {
    private record Open(int level, PDOutlineNode node) {}

    private final PDDocumentOutline outline = new PDDocumentOutline();
    private final Deque<Open> open = new ArrayDeque<>();

    void add(int level, String title, PDPage page, float y) {
        PDPageXYZDestination place = new PDPageXYZDestination();
        place.setPage(page);
        place.setTop((int) Math.ceil(y));
        place.setLeft(0);
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(title);
        item.setDestination(place);
        while (!open.isEmpty() && open.peek().level >= level) {
            open.pop();
        }
        PDOutlineNode parent = open.isEmpty() ? outline : open.peek().node;
        parent.addLast(item);
        open.push(new Open(level, item));
    }

    void close(PDDocument document) {
        if (outline.hasChildren()) {
            document.getDocumentCatalog().setDocumentOutline(outline);
            outline.openNode();
        }
    }
}
