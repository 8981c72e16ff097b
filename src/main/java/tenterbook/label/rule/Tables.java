package tenterbook.label.rule;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Reads the tables of rules and of care, under {@code /label}. */
public final class Tables {
    private Tables() {}

    /** The rows of a table by its file name; a missing or damaged one is a fault of the program's own. */
    public static List<CSVRecord> rows(String name) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader reader = new InputStreamReader(
                Objects.requireNonNull(Tables.class.getResourceAsStream("/label/" + name), name),
                StandardCharsets.UTF_8)) {
            return format.parse(reader).getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException("The table /label/%s cannot be read".formatted(name), e);
        }
    }
}
