package tenterbook.exchange.sheet.file;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Refusal;

/** Reads a sheet of xlsx row by row. Of a formula the value that was stored with it is read; nothing is calculated. */
final class XlsxSheet {
    private XlsxSheet() {}

    static void rows(Path file, Collection<String> names, SheetRow.Sink sink) throws IOException {
        try (ReadableWorkbook book = open(file)) {
            Sheet sheet = named(book, names);
            try (Stream<Row> rows = sheet.openStream()) {
                Iterator<Row> each = rows.iterator();
                Row row = next(each);
                while (row != null && sink.take(new SheetRow(row.getRowNum(), cells(row, book.isDate1904())))) {
                    row = next(each);
                }
            }
        }
    }

    /** Null after the last. The library has no common type for what it throws at damaged XML. */
    private static @Nullable Row next(Iterator<Row> rows) {
        try {
            return rows.hasNext() ? rows.next() : null;
        } catch (RuntimeException e) {
            throw SheetFile.unreadable(e);
        }
    }

    private static ReadableWorkbook open(Path file) throws IOException {
        try {
            return new ReadableWorkbook(file.toFile(), new ReadingOptions(true, false));
        } catch (RuntimeException e) {
            throw SheetFile.unreadable(e);
        }
    }

    private static Sheet named(ReadableWorkbook book, Collection<String> names) {
        Optional<Sheet> named = book.getSheets()
                .filter(sheet -> names.stream().anyMatch(sheet.getName()::equalsIgnoreCase))
                .findFirst();
        return named.orElseGet(book::getFirstSheet);
    }

    private static List<String> cells(Row row, boolean from1904) {
        int size = row.getCellCount();
        if (size > SheetRow.MOST_COLUMNS) {
            size = lastFilled(row) + 1;
            if (size > SheetRow.MOST_COLUMNS) {
                throw Refusal.of("import.too-many-columns", "most", SheetRow.MOST_COLUMNS, "found", size);
            }
        }
        List<String> cells = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            cells.add(text(row.getCell(i), from1904));
        }
        return cells;
    }

    private static int lastFilled(Row row) {
        int last = row.getCellCount() - 1;
        while (last > 0 && text(row.getCell(last), false).isBlank()) {
            last--;
        }
        return last;
    }

    private static String text(@Nullable Cell cell, boolean from1904) {
        if (cell == null || cell.getType() == CellType.EMPTY) {
            return "";
        }
        Object value = cell.getValue();
        if (value instanceof BigDecimal number) {
            return CellNumber.text(number, cell.getDataFormatString(), from1904);
        }
        if (value instanceof Boolean yes) {
            return yes ? "yes" : "no";
        }
        return value == null ? Optional.ofNullable(cell.getRawValue()).orElse("") : value.toString();
    }
}
