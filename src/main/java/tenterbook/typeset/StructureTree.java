package tenterbook.typeset;

import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDTableAttributeObject;

/** The structure tree of one document, and the part to which each marked stretch of a page belongs. */
final class StructureTree {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final Map<Integer, PDParentTreeValue> owners = new TreeMap<>();

    /** The list of the owners of the page's stretches. */
    COSArray open(PDPage page) {
        COSArray stretches = new COSArray();
        page.setStructParents(owners.size());
        owners.put(owners.size(), new PDParentTreeValue(stretches));
        return stretches;
    }

    /** The number of a new stretch of {@code page} that belongs to {@code tag}. */
    int mark(StructureTag tag, PDPage page, COSArray stretches) {
        PDStructureElement element = entered(tag);
        int number = stretches.size();
        PDMarkedContentReference stretch = new PDMarkedContentReference();
        stretch.setMCID(number);
        stretch.setPage(page);
        element.appendKid(stretch);
        stretches.add(element.getCOSObject());
        return number;
    }

    private PDStructureElement entered(StructureTag tag) {
        if (tag.element() == null) {
            PDStructureNode parent = tag.parent() == null ? root : entered(tag.parent());
            PDStructureElement element = new PDStructureElement(tag.type(), parent);
            if (!tag.instead().isEmpty()) {
                element.setAlternateDescription(tag.instead());
            }
            if (tag.type().equals("TH")) {
                PDTableAttributeObject head = new PDTableAttributeObject();
                head.setScope(
                        tag.parent().ofHeads()
                                ? PDTableAttributeObject.SCOPE_COLUMN
                                : PDTableAttributeObject.SCOPE_ROW);
                element.addAttribute(head);
            }
            parent.appendKid(element);
            tag.entered(element);
        }
        return tag.element();
    }

    void close(PDDocument document) {
        PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(owners);
        root.setParentTree(tree);
        root.setParentTreeNextKey(owners.size());
        document.getDocumentCatalog().setStructureTreeRoot(root);
        PDMarkInfo marked = new PDMarkInfo();
        marked.setMarked(true);
        document.getDocumentCatalog().setMarkInfo(marked);
    }
}
