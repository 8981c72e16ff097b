package tenterbook.label.document.set;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import tenterbook.label.document.DocumentText;
import tenterbook.label.document.Dress;
import tenterbook.label.document.PageSize;
import tenterbook.label.document.Photographs;
import tenterbook.label.layout.DoesNotFit;
import tenterbook.label.layout.Faces;
import tenterbook.label.layout.Paper;
import tenterbook.label.layout.Setter;
import tenterbook.label.layout.Tag;

/** Lays documents on pages as tagged PDF/A-2a with an outline, and shows them as pictures. */
public final class DocumentPaper {
    private static final String LANGUAGE = "en-GB";

    /** To which type shrinks on a wall, so that all has room on one page. */
    private static final double LEAST_SCALE = 0.76;

    private DocumentPaper() {}

    /**
     * Writes documents one after another, each with pages numbered by itself; nothing is written unless all have room.
     *
     * @throws DoesNotFit naming the words that have no room
     * @throws tenterbook.label.layout.CannotBeSet where a character cannot be set
     * @return the number of pages in all
     */
    public static int pdf(
            List<DocumentText> texts,
            PageSize page,
            Dress dress,
            Photographs photographs,
            OutputStream out,
            Clock clock)
            throws IOException {
        if (texts.isEmpty()) {
            throw new IllegalArgumentException("A document was asked for no piece; choose at least one");
        }
        try (Paper paper = Paper.tagged(clock);
                Faces faces = Faces.open()) {
            Words words = new Words(new Setter(faces));
            Shots shots = new Shots(photographs);
            Tag whole = Tag.document();
            int count = 0;
            for (DocumentText text : texts) {
                count += draw(paper, text, page, dress, words, shots, whole);
            }
            paper.save(name(texts), LANGUAGE, out);
            return count;
        }
    }

    private static int draw(
            Paper paper, DocumentText text, PageSize page, Dress dress, Words words, Shots shots, Tag whole)
            throws IOException {
        double scale = 1;
        List<List<Pages.Placed>> pages;
        Type type;
        do {
            type = Type.of(dress, page, scale);
            pages = Pages.of(new Blocks(new Desk(type, words, shots, whole.child("Part"))).of(text), type);
            scale -= 0.03;
        } while (dress == Dress.WALL && pages.size() > 1 && scale >= LEAST_SCALE);
        if (dress == Dress.WALL && pages.size() > 1) {
            throw tooMuch(text, page, pages);
        }
        for (int i = 0; i < pages.size(); i++) {
            List<Pages.Placed> placed = pages.get(i);
            Furniture furniture = new Furniture(text, type, words, i + 1, pages.size());
            paper.page(page.widthMm(), page.heightMm(), null, ink -> {
                if (dress != Dress.WALL) {
                    furniture.head(ink);
                }
                placed.forEach(each -> each.slab().drawing().draw(ink, each.y()));
                if (dress != Dress.WALL) {
                    furniture.foot(ink);
                }
            });
        }
        return pages.size();
    }

    private static DoesNotFit tooMuch(DocumentText text, PageSize page, List<List<Pages.Placed>> pages) {
        List<String> left = pages.subList(1, pages.size()).stream()
                .flatMap(List::stream)
                .map(placed -> placed.slab().words())
                .filter(words -> !words.isEmpty())
                .toList();
        return new DoesNotFit("The text “" + text.title() + "”", page.widthMm(), page.heightMm(), left);
    }

    /** Its title and whom it is about, once each; of several the first and how many. */
    private static String name(List<DocumentText> texts) {
        return texts.size() == 1
                ? name(texts.get(0))
                : "%s, and %d more".formatted(name(texts.get(0)), texts.size() - 1);
    }

    private static String name(DocumentText text) {
        return text.running().isEmpty() || text.running().contains(text.title())
                ? text.running().isEmpty() ? text.title() : text.running()
                : text.title() + ", " + text.running();
    }

    /**
     * A picture of one page, PNG.
     *
     * @param number of the page, from 1
     * @param dpi dots per inch, 36 to 300
     */
    public static byte[] png(byte[] pdf, int number, double dpi) throws IOException {
        if (!(dpi >= 36 && dpi <= 300)) {
            throw new IllegalArgumentException("A picture of a page has 36 to 300 dots per inch; found " + dpi);
        }
        try (PDDocument document = Loader.loadPDF(pdf)) {
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(number - 1, (float) dpi, ImageType.RGB);
            ByteArrayOutputStream png = new ByteArrayOutputStream();
            ImageIO.write(image, "png", png);
            return png.toByteArray();
        }
    }
}
