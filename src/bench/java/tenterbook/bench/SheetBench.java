package tenterbook.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Archive;
import tenterbook.exchange.sheet.ColumnProposal;
import tenterbook.exchange.sheet.ImportChoices;
import tenterbook.exchange.sheet.SheetHead;
import tenterbook.exchange.sheet.SheetImport;
import tenterbook.exchange.sheet.SheetKind;
import tenterbook.exchange.sheet.file.SheetFile;
import tenterbook.exchange.sheet.file.SheetWriter;
import tenterbook.ledger.file.Progress;

/** How long a sheet takes to be judged and brought in; run with a bounded heap, as {@code -Xmx96m}. */
public final class SheetBench {
    private SheetBench() {}

    /** @param args a folder for files, and a number of rows */
    public static void main(String[] args) throws IOException {
        Path folder = Files.createTempDirectory(Path.of(args[0]), "sheets");
        int rows = Integer.parseInt(args[1]);
        SheetWriter.Rows made = row -> {
            row.accept(List.of("number", "title", "length", "width", "finished", "price", "notes"));
            for (int i = 1; i <= rows; i++) {
                row.accept(List.of(
                        "T" + (100000 + i), "Tide " + i, "180 cm", "about 40 cm", "2024-03", "€ 180", "note " + i));
            }
        };
        Path csv = folder.resolve("sheet.csv");
        try (OutputStream out = Files.newOutputStream(csv)) {
            SheetWriter.csv(out, made);
        }
        Path xlsx = folder.resolve("sheet.xlsx");
        try (OutputStream out = Files.newOutputStream(xlsx)) {
            SheetWriter.xlsx(out, Map.of("Pieces", made));
        }
        try (Archive archive = Archive.open(folder.resolve("studio"), Clock.systemUTC())) {
            for (Path file : List.of(csv, xlsx)) {
                SheetImport sheet = sheet(archive, file);
                long start = System.nanoTime();
                System.out.println(
                        sheet.judge(Progress.UNWATCHED, row -> {}) + " judged " + file.getFileName() + took(start));
            }
            long start = System.nanoTime();
            System.out.println(sheet(archive, xlsx).write("bench", rows, Progress.UNWATCHED, row -> {}) + " written"
                    + took(start));
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

    private static String took(long start) {
        return " in " + (System.nanoTime() - start) / 1_000_000 + " ms";
    }
}
