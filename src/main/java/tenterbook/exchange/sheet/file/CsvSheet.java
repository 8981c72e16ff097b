package tenterbook.exchange.sheet.file;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Reads CSV (RFC 4180) with a comma, semicolon or tab between the cells, whichever divides its first rows most evenly. */
final class CsvSheet {
    private static final int LOOKED_AT = 1 << 16;
    private static final int ROWS_LOOKED_AT = 20;
    private static final List<Character> SEPARATORS = List.of(',', ';', '\t');

    /** Characters of the row, in which spreadsheets of some countries name their separator. */
    private static final String NAMED = "sep=";

    /** Longest row in characters; a quotation mark that is never closed would make one row of the whole rest. */
    private static final int LONGEST_ROW = 1 << 20;

    private CsvSheet() {}

    static void rows(Path file, SheetRow.Sink sink) throws IOException {
        try (BufferedReader reader =
                new BufferedReader(Files.newBufferedReader(file, TextEncoding.of(file)), LOOKED_AT)) {
            reader.mark(LOOKED_AT);
            char[] head = new char[LOOKED_AT];
            int length = 0;
            for (int more = 0; more >= 0 && length < LOOKED_AT - 1; length += Math.max(0, more)) {
                more = reader.read(head, length, LOOKED_AT - 1 - length);
            }
            reader.reset();
            String beginning = new String(head, 0, length);
            if (beginning.startsWith("\uFEFF")) {
                reader.read();
                beginning = beginning.substring(1);
            }
            boolean named = beginning.regionMatches(true, 0, NAMED, 0, NAMED.length()) && beginning.length() > 4;
            char separator = named ? beginning.charAt(NAMED.length()) : separator(beginning);
            read(reader, separator, named, sink);
        }
    }

    private static void read(Reader reader, char separator, boolean named, SheetRow.Sink sink) throws IOException {
        long number = 0;
        try (CSVParser parser = parser(new BoundedRows(reader), separator)) {
            for (CSVRecord row : parser) {
                number = row.getRecordNumber();
                if (named && number == 1) {
                    continue;
                }
                if (row.size() > SheetRow.MOST_COLUMNS) {
                    throw Refusal.of("import.too-many-columns", "most", SheetRow.MOST_COLUMNS, "found", row.size());
                }
                List<String> cells = new ArrayList<>(row.size());
                row.forEach(cell -> cells.add(FormulaText.read(cell)));
                if (!sink.take(new SheetRow((int) number, cells))) {
                    return;
                }
            }
        } catch (UncheckedIOException | IllegalStateException e) {
            throw new Refusal(Message.of("import.csv-damaged", "row", number + 1), e);
        }
    }

    private static CSVParser parser(Reader reader, char separator) throws IOException {
        return CSVFormat.RFC4180
                .builder()
                .setDelimiter(separator)
                .setIgnoreEmptyLines(false)
                .setLenientEof(true)
                .setTrailingData(true)
                .get()
                .parse(reader);
    }

    /** Commas where nothing divides the rows. */
    private static char separator(String beginning) {
        char best = ',';
        int most = 0;
        for (char each : SEPARATORS) {
            int score = evenness(beginning, each);
            if (score > most) {
                best = each;
                most = score;
            }
        }
        return best;
    }

    /** How many of the first rows have as many cells as the fullest of them, weighed above how many those are. */
    private static int evenness(String beginning, char separator) {
        List<Integer> sizes = new ArrayList<>();
        try (CSVParser parser = parser(new StringReader(beginning), separator)) {
            for (CSVRecord row : parser) {
                if (row.size() > 1 || !row.get(0).isBlank()) {
                    sizes.add(row.size());
                }
                if (sizes.size() == ROWS_LOOKED_AT) {
                    break;
                }
            }
        } catch (IOException | UncheckedIOException | IllegalStateException e) {
            // Read with another separator, or said where the rows are read.
        }
        int widest = sizes.stream().mapToInt(size -> size).max().orElse(1);
        long even = sizes.stream().filter(size -> size == widest).count();
        return widest == 1 ? 0 : (int) even * 1000 + Math.min(widest, 999);
    }

    /** Refuses a row that does not end. */
    private static final class BoundedRows extends java.io.FilterReader {
        private int sinceLineEnd;

        BoundedRows(Reader in) {
            super(in);
        }

        @Override
        public int read(char[] to, int from, int length) throws IOException {
            int got = super.read(to, from, length);
            for (int i = from; i < from + got; i++) {
                count(to[i]);
            }
            return got;
        }

        @Override
        public int read() throws IOException {
            int got = super.read();
            count(got);
            return got;
        }

        private void count(int character) {
            sinceLineEnd = character == '\n' || character == '\r' ? 0 : sinceLineEnd + 1;
            if (sinceLineEnd > LONGEST_ROW) {
                throw Refusal.of("import.row-too-long", "most", LONGEST_ROW);
            }
        }
    }
}
