package tenterbook.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import tenterbook.archive.Archive;
import tenterbook.exchange.sheet.ColumnProposal;
import tenterbook.exchange.sheet.ImportChoices;
import tenterbook.exchange.sheet.SheetExport;
import tenterbook.exchange.sheet.SheetHead;
import tenterbook.exchange.sheet.SheetImport;
import tenterbook.exchange.sheet.SheetKind;
import tenterbook.exchange.sheet.file.SheetFile;
import tenterbook.exchange.sheet.file.SheetWriter;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Conventions;

/**
 * How long sheets of pieces take to be judged, brought in and written out, and how much heap is in use meanwhile: after a collection at each
 * tenth of the rows, which is in the time. Run with a bounded heap, as {@code -Xmx256m}.
 */
public final class SheetBench {
    private static final String FORMULA = "=cmd|' /C calc'!A0";

    private final int rows;
    private int seen;
    private long most;
    private long start;

    private SheetBench(int rows) {
        this.rows = rows;
    }

    /** @param args a folder for files, and a number of rows, of which ods has one less, since its heading counts */
    public static void main(String[] args) throws IOException {
        Path folder = Files.createTempDirectory(Path.of(args[0]), "sheets");
        int rows = Integer.parseInt(args[1]);
        new SheetBench(rows).run(folder);
    }

    private void made(Consumer<List<String>> row, int count) {
        row.accept(List.of("number", "title", "length", "width", "finished", "price", "notes"));
        for (int i = 1; i <= count; i++) {
            String note = i == 1 ? FORMULA : "note " + i;
            row.accept(List.of("T" + (100000 + i), "Tide " + i, "180 cm", "about 40 cm", "2024-03", "€ 180", note));
        }
    }

    private void run(Path folder) throws IOException {
        Path csv = folder.resolve("sheet.csv");
        try (OutputStream out = Files.newOutputStream(csv)) {
            SheetWriter.csv(out, row -> made(row, rows));
        }
        Path xlsx = folder.resolve("sheet.xlsx");
        begin();
        try (OutputStream out = Files.newOutputStream(xlsx)) {
            SheetWriter.xlsx(out, Map.of("Pieces", row -> made(counted(row), rows)));
        }
        took("xlsx of made-up rows written");
        Path ods = folder.resolve("sheet.ods");
        ods(ods);
        try (Archive archive = Archive.open(folder.resolve("studio"), Clock.systemUTC())) {
            for (Path file : List.of(csv, xlsx, ods)) {
                SheetImport sheet = sheet(archive, file);
                begin();
                SheetImport.Counts counts = sheet.judge(Progress.UNWATCHED, row -> count());
                took(file.getFileName() + " judged, " + counts);
            }
            SheetImport sheet = sheet(archive, xlsx);
            begin();
            SheetImport.Counts counts = sheet.write("bench", rows, Progress.UNWATCHED, row -> count());
            took("xlsx brought in, " + counts);
            Path out = folder.resolve("out.xlsx");
            SheetExport export = new SheetExport(SheetKind.PIECES, true);
            begin();
            try (OutputStream to = Files.newOutputStream(out)) {
                SheetWriter.xlsx(to, Map.of("Pieces", row -> {
                    row.accept(export.headings(Conventions.english()));
                    export.rows(archive, counted(row));
                }));
            }
            took("xlsx taken out, " + Files.size(out) + " bytes");
            List<String> cells = new ArrayList<>();
            SheetFile.of(out).rows(List.of("Pieces"), row -> {
                cells.addAll(row.cells());
                return row.number() < 2;
            });
            System.out.println(
                    "the formula is a text there: " + cells.stream().anyMatch(cell -> cell.endsWith(FORMULA)));
        }
    }

    private Consumer<List<String>> counted(Consumer<List<String>> row) {
        return cells -> {
            row.accept(cells);
            count();
        };
    }

    private void begin() {
        seen = 0;
        most = used();
        start = System.nanoTime();
    }

    private void count() {
        if (++seen % Math.max(1, rows / 10) == 0) {
            most = Math.max(most, used());
        }
    }

    private static long used() {
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        return runtime.totalMemory() - runtime.freeMemory();
    }

    private void took(String what) {
        System.out.printf(
                "%s: %,d ms, heap in use at most %,d MB%n", what, (System.nanoTime() - start) / 1_000_000, most >> 20);
    }

    /** OpenDocument 1.3, with no more than a reader needs. */
    private void ods(Path file) throws IOException {
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            zip.putNextEntry(new ZipEntry("content.xml"));
            write(
                    zip,
                    "<office:document-content xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
                            + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
                            + " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\">"
                            + "<office:body><office:spreadsheet><table:table table:name=\"Pieces\">");
            made(
                    cells -> {
                        StringBuilder row = new StringBuilder("<table:table-row>");
                        cells.forEach(cell -> row.append("<table:table-cell office:value-type=\"string\"><text:p>")
                                .append(cell)
                                .append("</text:p></table:table-cell>"));
                        write(zip, row.append("</table:table-row>").toString());
                    },
                    rows - 1);
            write(zip, "</table:table></office:spreadsheet></office:body></office:document-content>");
        }
    }

    private static void write(OutputStream to, String text) {
        try {
            to.write(text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static SheetImport sheet(Archive archive, Path file) {
        SheetHead head = SheetHead.of(SheetFile.of(file), SheetKind.PIECES);
        return new SheetImport(
                archive,
                file,
                SheetKind.PIECES,
                new ColumnProposal(SheetKind.PIECES, head).plan(),
                ImportChoices.USUAL);
    }
}
