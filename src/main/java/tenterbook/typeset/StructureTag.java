package tenterbook.typeset;

import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;

/**
 * A part of a document's logical structure, as in {@code P} or {@code TD}, for screen readers and reflowing. It is added to the
 * document when first drawn; parts are in the order of drawing.
 *
 * @see "ISO 32000-1, 14.8.4: standard structure types"
 */
public final class StructureTag {
    private final StructureTag parent;
    private final String type;
    private final String instead;
    private final boolean heads;
    private PDStructureElement element;

    private StructureTag(StructureTag parent, String type, String instead, boolean heads) {
        this.parent = parent;
        this.type = type;
        this.instead = instead;
        this.heads = heads;
    }

    /** The whole document; one for each {@link PdfDocument}. */
    public static StructureTag document() {
        return new StructureTag(null, "Document", "", false);
    }

    /** @param type one of the standard's own, as in {@code H1}, {@code P}, {@code Table}, {@code TR} */
    public StructureTag child(String type) {
        return new StructureTag(this, type, "", false);
    }

    /** The row of a table whose cells are heads of columns; a {@code TH} in any other row is the head of its row. */
    public StructureTag heads() {
        return new StructureTag(this, "TR", "", true);
    }

    /**
     * A picture.
     *
     * @param instead what it shows, for someone who cannot see it
     */
    public StructureTag figure(String instead) {
        return new StructureTag(this, "Figure", instead, false);
    }

    StructureTag parent() {
        return parent;
    }

    boolean ofHeads() {
        return heads;
    }

    String type() {
        return type;
    }

    String instead() {
        return instead;
    }

    PDStructureElement element() {
        return element;
    }

    void entered(PDStructureElement made) {
        element = made;
    }
}
