package tenterbook.documents.layout;

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
import tenterbook.documents.DocumentSettings;
import tenterbook.documents.DocumentText;
import tenterbook.documents.DocumentTheme;
import tenterbook.documents.PageSize;
import tenterbook.documents.PhotoSource;
import tenterbook.measure.NumberWords;
import tenterbook.typeset.DoesNotFit;
import tenterbook.typeset.LineBreaker;
import tenterbook.typeset.PdfDocument;
import tenterbook.typeset.StructureTag;
import tenterbook.typeset.Typefaces;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.PaperLanguage;
import tenterbook.words.Refusal;

/** Lays documents on pages as tagged PDF/A-2a with an outline, and shows them as pictures. */
public final class DocumentPaper {
    /** Of type on a wall: as large as has room on one page, and not larger than becomes the page. */
    private static final double MOST_ON_WALL = 1.3;

    private static final double LEAST_ON_WALL = 0.76;

    /** Type on a card shrinks so far to keep it one card; where that is not enough there are two. */
    private static final double LEAST_ON_CARD = 0.84;

    private static final double STEP = 0.03;

    private static final double STEP_OF_AIR = 0.15;

    private DocumentPaper() {}

    /**
     * Writes documents one after another, each with pages numbered by itself; nothing is written unless all have room.
     *
     * @param settings on which paper, how and in which language they are laid out
     * @throws DoesNotFit naming the words that have no room
     * @throws tenterbook.typeset.UnsupportedCharacter where a character cannot be set
     * @return the number of pages in all
     */
    public static int pdf(
            List<DocumentText> texts, DocumentSettings settings, PhotoSource photographs, OutputStream out, Clock clock)
            throws IOException {
        return PaperLanguage.write(
                Conventions.english().in(settings.language()),
                () -> pdf(texts, settings.page(), settings.kind().dress(), photographs, out, clock));
    }

    static int pdf(
            List<DocumentText> texts,
            PageSize page,
            DocumentTheme dress,
            PhotoSource photographs,
            OutputStream out,
            Clock clock)
            throws IOException {
        if (texts.isEmpty()) {
            throw Refusal.of("document.refused.any-without-piece");
        }
        try (PdfDocument paper = PdfDocument.tagged(clock);
                Typefaces faces = Typefaces.open()) {
            LineLayout words = new LineLayout(new LineBreaker(faces, PaperLanguage.language()));
            PrintImages shots = new PrintImages(photographs);
            StructureTag whole = StructureTag.document();
            int count = 0;
            for (DocumentText text : texts) {
                count += draw(paper, text, page, dress, words, shots, whole);
            }
            paper.save(name(texts), PaperLanguage.language().tag(), out);
            return count;
        }
    }

    private static int draw(
            PdfDocument paper,
            DocumentText text,
            PageSize page,
            DocumentTheme dress,
            LineLayout words,
            PrintImages shots,
            StructureTag whole)
            throws IOException {
        if (dress == DocumentTheme.SHEET || dress == DocumentTheme.BENCH) {
            PageStyle type = airy(text, page, dress, words, shots, whole);
            List<List<PageBreaker.Placed>> pages = set(text, type, words, shots, whole);
            draw(paper, text, page, dress, words, type, pages);
            return pages.size();
        }
        double least = dress == DocumentTheme.WALL ? LEAST_ON_WALL : dress == DocumentTheme.CARD ? LEAST_ON_CARD : 1;
        PageStyle type = null;
        List<List<PageBreaker.Placed>> pages = List.of();
        for (double scale = dress == DocumentTheme.WALL ? MOST_ON_WALL : 1;
                scale >= least && pages.size() != 1;
                scale -= STEP) {
            type = PageStyle.of(dress, page, scale);
            pages = set(text, type, words, shots, whole);
        }
        if (dress == DocumentTheme.CARD && pages.size() > 1) {
            type = PageStyle.of(dress, page, 1);
            pages = set(text, type, words, shots, whole);
        }
        PageStyle chosen = type;
        if (dress == DocumentTheme.WALL && pages.size() > 1) {
            throw tooMuch(text, page, pages);
        }
        draw(paper, text, page, dress, words, chosen, pages);
        return pages.size();
    }

    /** Type of its usual size, with as much air as costs no further page. */
    private static PageStyle airy(
            DocumentText text,
            PageSize page,
            DocumentTheme dress,
            LineLayout words,
            PrintImages shots,
            StructureTag whole) {
        PageStyle usual = PageStyle.of(dress, page, 1);
        int most = set(text, usual, words, shots, whole).size();
        PageStyle tightest = PageStyle.of(dress, page, 1, PageStyle.LEAST_AIR);
        int fewest = most == 1 ? 1 : set(text, tightest, words, shots, whole).size();
        if (fewest >= most) {
            return usual;
        }
        for (double air = 1 - STEP_OF_AIR; air > PageStyle.LEAST_AIR; air -= STEP_OF_AIR) {
            PageStyle type = PageStyle.of(dress, page, 1, air);
            if (set(text, type, words, shots, whole).size() <= fewest) {
                return type;
            }
        }
        return tightest;
    }

    private static void draw(
            PdfDocument paper,
            DocumentText text,
            PageSize page,
            DocumentTheme dress,
            LineLayout words,
            PageStyle chosen,
            List<List<PageBreaker.Placed>> pages)
            throws IOException {
        for (int i = 0; i < pages.size(); i++) {
            List<PageBreaker.Placed> placed = pages.get(i);
            HeaderAndFooter furniture = new HeaderAndFooter(text, chosen, words, i + 1, pages.size());
            paper.page(page.widthMm(), page.heightMm(), null, ink -> {
                if (dress != DocumentTheme.WALL) {
                    furniture.head(ink);
                }
                placed.forEach(each -> each.slab().drawing().draw(ink, each.y()));
                if (dress != DocumentTheme.WALL) {
                    furniture.foot(ink);
                }
            });
        }
    }

    private static List<List<PageBreaker.Placed>> set(
            DocumentText text, PageStyle type, LineLayout words, PrintImages shots, StructureTag whole) {
        return PageBreaker.of(new Blocks(new LayoutContext(type, words, shots, whole.child("Part"))).of(text), type);
    }

    private static DoesNotFit tooMuch(DocumentText text, PageSize page, List<List<PageBreaker.Placed>> pages) {
        List<String> left = pages.subList(1, pages.size()).stream()
                .flatMap(List::stream)
                .map(placed -> placed.slab().words())
                .filter(words -> !words.isEmpty())
                .toList();
        return new DoesNotFit(
                Message.of("document.the-text", "title", text.title()), page.widthMm(), page.heightMm(), left);
    }

    /** Its title and whom it is about, once each; of several the first and how many. */
    private static String name(List<DocumentText> texts) {
        return texts.size() == 1
                ? name(texts.get(0))
                : Message.of("document.and-more", "first", name(texts.get(0)), "count", texts.size() - 1)
                        .onPaper();
    }

    private static String name(DocumentText text) {
        if (text.running().isEmpty()) {
            return text.title();
        }
        return text.running().contains(text.title()) ? text.running() : text.title() + ", " + text.running();
    }

    /**
     * A picture of one page, PNG.
     *
     * @param number of the page, from 1
     * @param dpi dots per inch, 36 to 300
     */
    public static byte[] png(byte[] pdf, int number, double dpi) throws IOException {
        if (!(dpi >= 36 && dpi <= 300)) {
            throw Refusal.of("document.refused.picture", "found", NumberWords.plain(dpi));
        }
        try (PDDocument document = Loader.loadPDF(pdf)) {
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(number - 1, (float) dpi, ImageType.RGB);
            ByteArrayOutputStream png = new ByteArrayOutputStream();
            ImageIO.write(image, "png", png);
            return png.toByteArray();
        }
    }
}
