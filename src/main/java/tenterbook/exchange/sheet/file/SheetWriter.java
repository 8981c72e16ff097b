package tenterbook.exchange.sheet.file;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** Writes sheets while their rows are made. Every cell is a text: no spreadsheet calculates one. */
public final class SheetWriter {
    /** Spreadsheets take a file without it for one in an older encoding. */
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private static final int FLUSHED = 1000;

    private SheetWriter() {}

    /** Hands the rows of a sheet on, the headings first. */
    @FunctionalInterface
    public interface Rows {
        void each(Consumer<List<String>> row);
    }

    /** CSV (RFC 4180) in UTF-8 with a byte order mark. */
    public static void csv(OutputStream to, Rows rows) throws IOException {
        Writer out = new OutputStreamWriter(to, StandardCharsets.UTF_8);
        out.write(BYTE_ORDER_MARK);
        CSVPrinter csv = new CSVPrinter(out, CSVFormat.RFC4180);
        try {
            rows.each(row -> {
                try {
                    csv.printRecord(row.stream().map(FormulaText::written).toList());
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        csv.flush();
    }

    /** @param sheets by name, in order */
    public static void xlsx(OutputStream to, Map<String, Rows> sheets) throws IOException {
        Workbook book = new Workbook(to, "Tenterbook", "1.0");
        for (Map.Entry<String, Rows> each : sheets.entrySet()) {
            Worksheet sheet = book.newWorksheet(each.getKey());
            sheet.freezePane(0, 1);
            int[] row = {0};
            try {
                each.getValue().each(cells -> write(sheet, row, cells));
            } catch (UncheckedIOException e) {
                throw e.getCause();
            }
            sheet.finish();
        }
        book.finish();
    }

    private static void write(Worksheet sheet, int[] row, List<String> cells) {
        for (int column = 0; column < cells.size(); column++) {
            if (!cells.get(column).isEmpty()) {
                sheet.inlineString(row[0], column, cells.get(column));
            }
        }
        if (++row[0] % FLUSHED == 0) {
            try {
                sheet.flush();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
