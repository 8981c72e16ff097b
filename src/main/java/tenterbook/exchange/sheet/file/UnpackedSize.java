package tenterbook.exchange.sheet.file;

import java.io.IOException;
import java.io.InputStream;
import java.util.Enumeration;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import tenterbook.words.Refusal;

/**
 * How much the parts of a zipped sheet unpack to. A part may claim any size, so those that could be large are unpacked and counted, and
 * nothing of them is kept.
 */
final class UnpackedSize {
    /** A part up to this size is never refused, in bytes. */
    static final long FREE = 64L << 20;

    /** Sheets written by spreadsheet programs stay below 100, common practice; what Deflate can reach is {@link #MOST_OF_DEFLATE}. */
    private static final long MOST_RATIO = 200;

    /** Most bytes that one packed byte can stand for in Deflate (RFC 1951), about 1,032. */
    private static final long MOST_OF_DEFLATE = 1040;

    private UnpackedSize() {}

    /**
     * Looks at every part.
     *
     * @param mostShared most bytes of the one part of xlsx that is kept whole
     * @throws Refusal where a part unpacks to far more than a sheet does
     */
    static void check(ZipFile zip, long mostShared) throws IOException {
        byte[] buffer = new byte[1 << 16];
        for (Enumeration<? extends ZipEntry> parts = zip.entries(); parts.hasMoreElements(); ) {
            ZipEntry part = parts.nextElement();
            long packed = part.getCompressedSize();
            if (packed < 0 || packed > FREE / MOST_OF_DEFLATE) {
                boolean shared = part.getName().equals("xl/sharedStrings.xml");
                count(zip, part, buffer, shared ? mostShared : Math.max(FREE, packed * MOST_RATIO));
            }
        }
    }

    private static void count(ZipFile zip, ZipEntry part, byte[] buffer, long most) throws IOException {
        long unpacked = 0;
        try (InputStream in = zip.getInputStream(part)) {
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                unpacked += read;
                if (unpacked > most) {
                    throw Refusal.of("import.too-large", "most", most >> 20);
                }
            }
        }
    }
}
