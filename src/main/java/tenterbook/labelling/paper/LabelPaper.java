package tenterbook.labelling.paper;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.SheetSize;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.NumberWords;
import tenterbook.piece.PieceNumber;
import tenterbook.typeset.LineBreaker;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PdfDocument;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;
import tenterbook.typeset.UnsupportedCharacter;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Prints labels to PDF/A-2b at true size, and shows them as pictures. */
public final class LabelPaper {
    private static final TextStyle ANY = TextStyle.of(Typeface.TEXT, 10, 12, 10);

    private static final Message SETTING = Message.of("label.setting");

    /** Greatest number of labels in one file, for memory and time. */
    private static final int MOST = 10_000;

    private LabelPaper() {}

    private static void count(int pieces, int copies) {
        if ((long) pieces * copies > MOST) {
            throw Refusal.of(
                    "label.refused.too-many",
                    "most",
                    MOST,
                    "pieces",
                    pieces,
                    "copies",
                    copies,
                    "all",
                    (long) pieces * copies);
        }
    }

    /**
     * One label for each piece. Nothing is written to {@code out} unless all of them can be printed.
     *
     * @throws tenterbook.labelling.LabelBlocked where rules forbid a label, naming all such pieces
     * @throws tenterbook.typeset.DoesNotFit where text has no room at its smallest size
     * @throws UnsupportedCharacter where a character cannot be set
     * @throws Progress.Cancelled if asked to stop; nothing is then written
     */
    public static void pdf(
            List<PieceFacts> pieces, PrintSettings request, OutputStream out, Clock clock, Progress progress)
            throws IOException {
        print(LabelText.of(pieces, request), request, out, clock, progress);
    }

    /**
     * Prints labels from their words alone, as they were kept when issued; otherwise as {@link #pdf}.
     *
     * @throws IllegalArgumentException for more labels than one file holds
     */
    public static void print(
            List<LabelText> texts, PrintSettings request, OutputStream out, Clock clock, Progress progress)
            throws IOException {
        if (texts.isEmpty()) {
            throw Refusal.of("label.refused.no-piece");
        }
        Sheet sheet = Sheet.of(request);
        int copies = request.placement().copies();
        count(texts.size(), copies);
        int all = texts.size() * copies;
        try (PdfDocument paper = new PdfDocument(clock)) {
            int next = 0;
            int place = sheet.first();
            while (next < all) {
                int count = Math.min(all - next, sheet.boxes().size() - place);
                page(paper, sheet, request, sheet.boxes().subList(place, place + count), next, texts, progress);
                next += count;
                place = 0;
            }
            paper.save(title(texts, request), request.market().rules().language(), out);
        }
    }

    private static void page(
            PdfDocument paper,
            Sheet sheet,
            PrintSettings request,
            List<PdfDocument.Box> boxes,
            int before,
            List<LabelText> texts,
            Progress progress)
            throws IOException {
        int copies = request.placement().copies();
        int all = texts.size() * copies;
        PdfDocument.Box trim = sheet.boxes().size() == 1 && sheet.correction().isIdentity() ? boxes.get(0) : null;
        paper.page(sheet.widthMm(), sheet.heightMm(), trim, ink -> {
            sheet.furnish(ink, boxes, request.finish().cutMarks());
            for (int i = 0; i < boxes.size(); i++) {
                LabelText text = texts.get((before + i) / copies);
                PdfDocument.Box box = boxes.get(i);
                if (sheet.straight()) {
                    draw(text, ink.from(box.x(), box.y()));
                } else {
                    ink.through(sheet.lying(box), lying -> draw(text, lying));
                }
                progress.at(before + i + 1, all, SETTING);
                progress.orStop();
            }
        });
    }

    /**
     * How many labels one sheet of the request holds; 1 for a roll.
     *
     * @throws IllegalArgumentException where the label has no room on it, or it is begun beyond its last place
     */
    public static int places(PrintSettings request) {
        return Sheet.of(request).boxes().size();
    }

    /**
     * The same, for so many pieces.
     *
     * @throws IllegalArgumentException also where with their copies they are more than one file holds
     */
    public static int places(PrintSettings request, int pieces) {
        count(pieces, request.placement().copies());
        return places(request);
    }

    /** Why labels cannot be printed though no rule forbids them, by piece; empty where all can. Prints nothing. */
    public static Map<PieceNumber, String> unprintable(List<LabelText> texts, PrintSettings request)
            throws IOException {
        Map<PieceNumber, String> reasons = new LinkedHashMap<>();
        Sheet sheet = Sheet.of(request.on(SheetSize.SINGLE));
        PdfDocument.Box box = sheet.boxes().get(0);
        try (PdfDocument paper = new PdfDocument(Clock.systemUTC())) {
            paper.page(
                    sheet.widthMm(),
                    sheet.heightMm(),
                    box,
                    ink -> texts.forEach(text -> {
                        try {
                            draw(text, ink.from(box.x(), box.y()));
                        } catch (IllegalArgumentException e) {
                            reasons.put(text.number(), e.getMessage());
                        }
                    }));
        }
        return reasons;
    }

    private static void draw(LabelText text, PdfCanvas ink) {
        LineBreaker setter = ink.setter();
        try {
            text.lines().forEach(line -> setter.line(line.text(), ANY));
        } catch (UnsupportedCharacter e) {
            throw new UnsupportedCharacter(Message.of("label.piece", "number", text.number()), e);
        }
        LabelDrawing.of(text).draw(text, ink);
    }

    private static String title(List<LabelText> texts, PrintSettings request) {
        String kind = request.kind().name();
        Message title = texts.size() == 1
                ? Message.of(
                        "label.file-of-one", "kind", kind, "piece", texts.get(0).number())
                : Message.of("label.file-of-many", "kind", kind, "count", texts.size());
        return title.inEnglish();
    }

    /** A picture of the label alone, cut as it will be, PNG. */
    public static byte[] face(PieceFacts facts, PrintSettings request, double dpi) throws IOException {
        return picture(facts, request.on(SheetSize.SINGLE).times(1), dpi, true);
    }

    private static byte[] picture(PieceFacts facts, PrintSettings request, double dpi, boolean cut) throws IOException {
        if (!(dpi >= 36 && dpi <= 1200)) {
            throw Refusal.of("label.refused.picture", "found", NumberWords.plain(dpi));
        }
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        pdf(List.of(facts), request, pdf, Clock.systemUTC(), Progress.UNWATCHED);
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
