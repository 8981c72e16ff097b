package tenterbook.measure;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** A CSV table on the class path, with a header line and remarks after '#'. */
public final class OwnTable {
    private OwnTable() {}

    /**
     * The rows, in order. A missing or damaged table is an error of the program.
     *
     * @param path from the root of the class path, as in {@code /label/fibres.csv}
     */
    public static List<CSVRecord> rows(String path) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader reader = new InputStreamReader(
                Objects.requireNonNull(OwnTable.class.getResourceAsStream(path), path), StandardCharsets.UTF_8)) {
            return format.parse(reader).getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException("The program's own table " + path + " cannot be read", e);
        }
    }
}
