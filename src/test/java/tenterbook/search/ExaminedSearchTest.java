package tenterbook.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.condition.Examination;
import tenterbook.search.find.SearchResult;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;

/** Pieces are found by what was seen on them, and by when they were last examined. */
class ExaminedSearchTest {
    @TempDir
    Path folder;

    private static Examination examination(String id, String piece, String when, String observations) throws Exception {
        return ExaminationRecord.EXAMINATION.fromText("""
                {"id": "%s", "piece": "%s", "when": {"entered": "%s", "from": "%s", "to": "%s"},
                 "observations": [%s]}
                """.formatted(id, piece, when, when, when, observations));
    }

    private static List<String> chosen(PieceIndex index, String... years) {
        PieceQuery query = PieceQuery.EVERYTHING.withSort(Order.NUMBER);
        for (String year : years) {
            query = query.with(Facet.EXAMINED, year);
        }
        return Demo.numbers(index.search(query));
    }

    @Test
    void whatWasSeenIsFoundAtOnceAndAlsoWhatIsGone() throws Exception {
        try (Archive archive = Demo.archive(folder);
                PieceIndex index = PieceIndex.open(archive)) {
            Demo.fill(archive);
            assertThat(Demo.find(index, "moth")).isEmpty();

            Demo.save(
                    archive,
                    Kinds.EXAMINATION,
                    examination(
                            "E24-001",
                            "V24-003",
                            "2024-03-14",
                            "{\"number\": 1, \"what\": \"stain\", \"zone\": \"front\"},"
                                    + "{\"number\": 2, \"what\": \"hole\", \"note\": \"moth\", \"standing\": \"gone\"}"));

            assertThat(Demo.find(index, "stain")).containsExactly("V24-003");
            SearchResult moth = index.search(PieceQuery.EVERYTHING.withText("moth"));
            assertThat(Demo.numbers(moth)).containsExactly("V24-003");
            assertThat(moth.hits().get(0).why()).containsExactly("examined 2024-03-14: hole (gone), moth");
            assertThat(index.check(Progress.UNWATCHED)).isEmpty();

            Demo.withdraw(archive, Kinds.EXAMINATION, "E24-001");
            assertThat(Demo.find(index, "moth")).isEmpty();
            assertThat(index.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void theLatestExaminationCountsAndPiecesNeverExaminedAreFoundAsSuch() throws Exception {
        try (Archive archive = Demo.archive(folder);
                PieceIndex index = PieceIndex.open(archive)) {
            Demo.fill(archive);
            Demo.save(archive, Kinds.EXAMINATION, examination("E24-001", "V24-003", "2024-03-14", ""));
            Demo.save(archive, Kinds.EXAMINATION, examination("E24-002", "V24-003", "2019-05-01", ""));
            Demo.save(archive, Kinds.EXAMINATION, examination("E24-003", "V24-001", "2019-05-02", ""));

            assertThat(chosen(index, "2024")).containsExactly("V24-003");
            assertThat(chosen(index, "2019")).containsExactly("V24-001");
            assertThat(chosen(index, "never", "2019"))
                    .contains("V24-001")
                    .doesNotContain("V24-003")
                    .hasSize(4);
            assertThat(Demo.numbers(index.search(PieceQuery.EVERYTHING.withSort(Order.EXAMINED))))
                    .startsWith("V24-001", "V24-003")
                    .hasSize(5);
            Map<String, Integer> counts = Demo.counts(index.search(PieceQuery.EVERYTHING), Facet.EXAMINED);
            assertThat(counts).containsEntry("2024", 1).containsEntry("2019", 1).containsEntry("never", 3);

            index.reindex(Progress.UNWATCHED);
            assertThat(chosen(index, "2019")).containsExactly("V24-001");
        }
    }
}
