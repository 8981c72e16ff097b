package tenterbook.typeset;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.multipdf.PDFMergerUtility;

/** Several PDF files as one, page after page, for one press of a printer's button. It is not promised to be PDF/A. */
public final class MergedPdf {
    private MergedPdf() {}

    public static byte[] of(List<byte[]> files) throws IOException {
        PDFMergerUtility merger = new PDFMergerUtility();
        files.forEach(file -> merger.addSource(new RandomAccessReadBuffer(file)));
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        merger.setDestinationStream(all);
        merger.mergeDocuments(IOUtils.createMemoryOnlyStreamCache());
        return all.toByteArray();
    }
}
