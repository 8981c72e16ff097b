package tenterbook.exchange.sheet.file;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.zip.ZipFile;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** A sheet in a file, told by its bytes and not by its name: CSV, xlsx (ECMA-376) or ods (OpenDocument 1.3). */
public final class SheetFile {
    /** Most bytes of xlsx texts that are kept while reading: they are the one part that is not read row by row. */
    private static final long MOST_SHARED = 256L << 20;

    private enum Form {
        CSV,
        XLSX,
        ODS
    }

    private final Path file;
    private final Form form;

    private SheetFile(Path file, Form form) {
        this.file = file;
        this.form = form;
    }

    /** @throws Refusal where it is no sheet that can be read */
    public static SheetFile of(Path file) {
        try {
            byte[] first;
            try (InputStream in = Files.newInputStream(file)) {
                first = in.readNBytes(4096);
            }
            if (first.length == 0) {
                throw Refusal.of("import.empty-file");
            }
            if (first.length > 3 && first[0] == 'P' && first[1] == 'K') {
                return new SheetFile(file, zipped(file));
            }
            if (first.length > 3 && (first[0] & 0xFF) == 0xD0 && (first[1] & 0xFF) == 0xCF) {
                throw Refusal.of("import.old-spreadsheet");
            }
            if (!TextEncoding.isText(first)) {
                throw Refusal.of("import.no-sheet");
            }
            return new SheetFile(file, Form.CSV);
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    private static Form zipped(Path file) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            UnpackedSize.check(zip, MOST_SHARED);
            if (zip.getEntry("xl/workbook.xml") != null) {
                return Form.XLSX;
            }
            if (zip.getEntry("content.xml") != null) {
                return Form.ODS;
            }
        }
        throw Refusal.of("import.no-sheet");
    }

    /**
     * Hands the rows of a sheet on, in order, and keeps none.
     *
     * @param names the sheet that has one of these names is read, whatever the case of its letters; without one, the first
     * @throws Refusal where the file is damaged; rows before the damage were handed on
     */
    public void rows(Collection<String> names, SheetRow.Sink sink) {
        try {
            switch (form) {
                case CSV -> CsvSheet.rows(file, sink);
                case XLSX -> XlsxSheet.rows(file, names, sink);
                case ODS -> OdsSheet.rows(file, names, sink);
            }
        } catch (IOException | UncheckedIOException e) {
            throw unreadable(e);
        }
    }

    static Refusal unreadable(Exception e) {
        return new Refusal(Message.of("import.unreadable", "why", String.valueOf(e.getMessage())), e);
    }
}
