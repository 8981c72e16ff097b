package tenterbook.typeset;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;
import java.util.function.Consumer;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.xmpbox.XMPMetadata;
import org.apache.xmpbox.schema.PDFAIdentificationSchema;
import org.apache.xmpbox.type.BadFieldValueException;
import org.apache.xmpbox.xml.XmpSerializer;

/**
 * A PDF/A-2b document (ISO 19005-2), or PDF/A-2a where it is tagged, being made: pages in true millimetres, fonts embedded, sRGB output intent. The same pages
 * at the same instant of the clock give the same bytes, on the same version of Java (which supplies the sRGB profile).
 */
public final class PdfDocument implements AutoCloseable {
    private static final String PRODUCER = "Tenterbook";
    private static final byte[] SRGB =
            ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();

    private final PDDocument document = new PDDocument();
    private final Typefaces faces = Typefaces.open();
    private final EmbeddedTypefaces embedded = new EmbeddedTypefaces(document, faces);
    private final Clock clock;
    private final PdfImages pictures = new PdfImages(document);
    private final Outline outline = new Outline();
    private final StructureTree structure;

    public PdfDocument(Clock clock) {
        this(clock, null);
    }

    private PdfDocument(Clock clock, StructureTree structure) {
        this.clock = clock;
        this.structure = structure;
    }

    /** A tagged document, PDF/A-2a: everything must be drawn within {@link PdfCanvas#tagged} or {@link PdfCanvas#artifact}. */
    public static PdfDocument tagged(Clock clock) {
        return new PdfDocument(clock, new StructureTree());
    }

    /**
     * A region of a page, in millimetres from its upper left corner.
     *
     * @param x of the left side
     * @param y of the upper side
     */
    public record Box(double x, double y, double width, double height) {}

    /** Adds a page and draws it. {@code trim} is where it is to be cut, or null. */
    public void page(double widthMm, double heightMm, Box trim, Consumer<PdfCanvas> drawing) throws IOException {
        PDPage page = new PDPage(new PDRectangle((float) Mm.points(widthMm), (float) Mm.points(heightMm)));
        if (trim != null) {
            page.setTrimBox(new PDRectangle(
                    (float) Mm.points(trim.x),
                    (float) Mm.points(heightMm - trim.y - trim.height),
                    (float) Mm.points(trim.width),
                    (float) Mm.points(trim.height)));
        }
        document.addPage(page);
        try (PDPageContentStream content = new PDPageContentStream(document, page)) {
            PageMarks marks = new PageMarks(page, structure, outline, pictures);
            drawing.accept(new PdfCanvas(content, embedded, marks, heightMm, 0, 0));
        }
    }

    /**
     * Finishes the document and writes it.
     *
     * @param title of the document
     * @param language an RFC 5646 tag, as in {@code en-GB}
     */
    public void save(String title, String language, OutputStream out) throws IOException {
        GregorianCalendar now = GregorianCalendar.from(ZonedDateTime.now(clock).withNano(0));
        PDDocumentInformation about = document.getDocumentInformation();
        about.setTitle(title);
        about.setProducer(PRODUCER);
        about.setCreator(PRODUCER);
        about.setCreationDate(now);
        about.setModificationDate(now);
        document.getDocumentCatalog().setLanguage(language);
        PDMetadata metadata = new PDMetadata(document);
        metadata.importXMPMetadata(xmp(title, language, now, structure == null ? "B" : "A"));
        document.getDocumentCatalog().setMetadata(metadata);
        PDOutputIntent intent = new PDOutputIntent(document, new ByteArrayInputStream(SRGB));
        intent.setInfo("sRGB IEC61966-2.1");
        intent.setOutputCondition("sRGB IEC61966-2.1");
        intent.setOutputConditionIdentifier("sRGB IEC61966-2.1");
        intent.setRegistryName("http://www.color.org");
        document.getDocumentCatalog().addOutputIntent(intent);
        outline.close(document);
        if (structure != null) {
            structure.close(document);
        }
        document.setDocumentId(clock.millis());
        document.save(out);
    }

    private static byte[] xmp(String title, String language, GregorianCalendar now, String level) throws IOException {
        try {
            XMPMetadata xmp = XMPMetadata.createXMPMetadata();
            PDFAIdentificationSchema identification = xmp.createAndAddPDFAIdentificationSchema();
            identification.setPart(2);
            identification.setConformance(level);
            var core = xmp.createAndAddDublinCoreSchema();
            core.setTitle(title);
            core.addLanguage(language);
            var basic = xmp.createAndAddXMPBasicSchema();
            basic.setCreatorTool(PRODUCER);
            basic.setCreateDate(now);
            basic.setModifyDate(now);
            xmp.createAndAddAdobePDFSchema().setProducer(PRODUCER);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            // Java's own, so that the bytes do not depend on what else is on the class path; finding another takes
            // longer than writing.
            new XmpSerializer(TransformerFactory.newDefaultInstance(), DocumentBuilderFactory.newDefaultInstance())
                    .serialize(xmp, bytes, true);
            return bytes.toByteArray();
        } catch (BadFieldValueException | TransformerException e) {
            throw new IllegalStateException("The document's metadata could not be written", e);
        }
    }

    @Override
    public void close() throws IOException {
        document.close();
        faces.close();
    }
}
