package tenterbook.label.paper;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import tenterbook.label.LabelFacts;
import tenterbook.label.LabelRequest;
import tenterbook.label.LabelText;
import tenterbook.label.layout.CannotBeSet;
import tenterbook.label.layout.Face;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Paper;
import tenterbook.label.layout.Setter;
import tenterbook.label.layout.Style;

/** Prints labels to PDF/A-2b at true size, and shows them as pictures. */
public final class LabelPaper {
    private static final Style ANY = Style.of(Face.TEXT, 10, 12, 10);

    private LabelPaper() {}

    /**
     * One label for each piece. Nothing is written to {@code out} unless all of them can be printed.
     *
     * @throws tenterbook.label.LabelBlocked where rules forbid a label, naming all such pieces
     * @throws tenterbook.label.layout.DoesNotFit where text has no room at its smallest size
     * @throws CannotBeSet where a character cannot be set
     * @throws CancellationException where {@code progress} stops it
     */
    public static void pdf(
            List<LabelFacts> pieces, LabelRequest request, OutputStream out, Clock clock, Progress progress)
            throws IOException {
        print(LabelText.of(pieces, request), request, out, clock, progress);
    }

    /** Prints labels from their words alone, as they were kept when issued; otherwise as {@link #pdf}. */
    public static void print(
            List<LabelText> texts, LabelRequest request, OutputStream out, Clock clock, Progress progress)
            throws IOException {
        if (texts.isEmpty()) {
            throw new IllegalArgumentException("Printing labels was asked for no piece; choose at least one");
        }
        Sheet sheet = Sheet.of(request);
        int each = sheet.boxes().size();
        try (Paper paper = new Paper(clock)) {
            for (int first = 0; first < texts.size(); first += each) {
                List<LabelText> onPage = texts.subList(first, Math.min(first + each, texts.size()));
                int before = first;
                Paper.Box trim = each == 1 ? sheet.boxes().get(0) : null;
                paper.page(sheet.widthMm(), sheet.heightMm(), trim, ink -> {
                    sheet.furnish(ink, onPage.size());
                    for (int i = 0; i < onPage.size(); i++) {
                        Paper.Box box = sheet.boxes().get(i);
                        draw(onPage.get(i), ink.from(box.x(), box.y()));
                        if (!progress.goOn(before + i + 1, texts.size())) {
                            throw new CancellationException(
                                    "Printing was stopped after %d of %d labels; nothing was written"
                                            .formatted(before + i + 1, texts.size()));
                        }
                    }
                });
            }
            paper.save(title(texts, request), request.market().rules().language(), out);
        }
    }

    private static void draw(LabelText text, Ink ink) {
        Setter setter = ink.setter();
        try {
            text.lines().forEach(line -> setter.line(line.text(), ANY));
        } catch (CannotBeSet e) {
            throw new CannotBeSet("Piece " + text.number(), e);
        }
        LabelDrawing.of(text).draw(text, ink);
    }

    private static String title(List<LabelText> texts, LabelRequest request) {
        String kind = request.kind().toString();
        String capital = kind.substring(0, 1).toUpperCase(Locale.ROOT) + kind.substring(1);
        return texts.size() == 1
                ? capital + " " + texts.get(0).number()
                : "%ss, %d pieces".formatted(capital, texts.size());
    }

    /**
     * A picture of the whole first page, PNG.
     *
     * @param dpi dots per inch, 36 to 1200
     */
    public static byte[] png(LabelFacts facts, LabelRequest request, double dpi) throws IOException {
        return picture(facts, request, dpi, false);
    }

    /** A picture of the label alone, cut as it will be, PNG. */
    public static byte[] face(LabelFacts facts, LabelRequest request, double dpi) throws IOException {
        return picture(facts, request.on(null), dpi, true);
    }

    private static byte[] picture(LabelFacts facts, LabelRequest request, double dpi, boolean cut) throws IOException {
        if (!(dpi >= 36 && dpi <= 1200)) {
            throw new IllegalArgumentException("A picture of a label has 36 to 1200 dots per inch; found " + dpi);
        }
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        pdf(List.of(facts), request, pdf, Clock.systemUTC(), Progress.NONE);
        try (PDDocument document = Loader.loadPDF(pdf.toByteArray())) {
            PDPage page = document.getPage(0);
            if (cut) {
                page.setCropBox(page.getTrimBox());
            }
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, (float) dpi, ImageType.RGB);
            ByteArrayOutputStream png = new ByteArrayOutputStream();
            ImageIO.write(image, "png", png);
            return png.toByteArray();
        }
    }
}
