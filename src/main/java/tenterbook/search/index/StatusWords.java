package tenterbook.search.index;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.OwnTable;
import tenterbook.piece.Status;
import tenterbook.search.query.FacetValues;

/** The words for a status in both languages, so that one in quotes is found too; from the table of the words of questions. */
final class StatusWords {
    private record Row(String value, String phrases) {}

    private static final List<Row> ROWS = OwnTable.rows("/search/question-words.csv").stream()
            .filter(row -> row.get("kind").equals("status"))
            .map(row -> new Row(row.get("value"), row.get("phrases")))
            .toList();

    private StatusWords() {}

    /** Those that mean this status alone; none where it is not recorded. */
    static List<String> of(@Nullable Status status) {
        return ROWS.stream()
                .filter(row -> status != null && row.value().equals(FacetValues.word(status)))
                .flatMap(row -> Stream.of(row.phrases().split("\\|")))
                .toList();
    }
}
