package tenterbook.labelling.issue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.Changed;
import tenterbook.archive.record.StudioRecords;
import tenterbook.exchange.Restore;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.Samples;
import tenterbook.labelling.issue.HangTagStatus.Standing;
import tenterbook.labelling.issue.HangTagStatus.State;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.MappedCodec;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Category;
import tenterbook.piece.Studio;
import tenterbook.words.Joined;

/** The sample studio printed EU tags for V24-001, V24-002 and V24-003; the second was dyed again since. */
class TagTableTest {
    @TempDir
    Path folder;

    private Archive archive;

    @BeforeEach
    void open() {
        archive = restored("studio");
    }

    @AfterEach
    void close() {
        archive.close();
    }

    private Archive restored(String name) {
        Path place = folder.resolve(name);
        new Restore(Clock.systemUTC()).restore(Path.of("sample-archive").toAbsolutePath(), place, Progress.UNWATCHED);
        return Archive.open(place, Clock.systemUTC());
    }

    private static Map<String, List<Standing>> all(Archive archive, TagTable table) {
        return table.of(archive.ledger().allIdsEverUsed(Kinds.PIECE));
    }

    private static Standing eu(TagTable table, String number) {
        return table.of(List.of(number)).get(number).stream()
                .filter(standing -> standing.market() == Market.EU)
                .findFirst()
                .orElseThrow();
    }

    private static void rename(Archive archive, String name) {
        Studio was = archive.studio();
        int version = archive.ledger()
                .find(Kinds.STUDIO, Kinds.THE_STUDIO)
                .orElseThrow()
                .version();
        archive.ledger()
                .write(
                        "Inês",
                        act -> act.save(
                                Kinds.STUDIO, Changed.field(StudioRecords.STUDIO, was, "name", name), version, ""));
    }

    /** A piece whose cloth nobody recorded. */
    private void create(String number) {
        archive.ledger()
                .write(
                        "Inês",
                        act -> act.create(
                                Kinds.PIECE, Samples.piece(number, "In a drawer", "", Category.SCARF, List.of())));
    }

    private static void delete(Path root) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    private void sql(String statement) throws SQLException {
        Path file = archive.folder().derived().resolve("tags.db");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement run = connection.createStatement()) {
            assertThat(run.executeUpdate(statement)).isPositive();
        }
    }

    @Test
    void everyPieceStandsInEveryMarketWithItsReasons() {
        try (TagTable table = TagTable.open(archive)) {
            Map<String, List<Standing>> all = all(archive, table);
            assertThat(all).hasSize(archive.ledger().count(Kinds.PIECE));
            assertThat(all.values())
                    .allSatisfy(standings ->
                            assertThat(standings).extracting(Standing::market).containsExactly(Market.values()));
            assertThat(eu(table, "V24-001")).isEqualTo(new Standing(Market.EU, State.CURRENT, List.of()));
            assertThat(eu(table, "V24-002").state()).isEqualTo(State.OUT_OF_DATE);
            assertThat(eu(table, "V24-002").reasons()).isNotEmpty();
            assertThat(eu(table, "V24-010")).isEqualTo(new Standing(Market.EU, State.NONE, List.of()));
            assertThat(table.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    /** The reasons are those that the page of the issued paper tells, word for word. */
    @Test
    void theReasonsAreThePartsThatTodaysTagWouldSayOtherwise() {
        rename(archive, "Another name");
        try (TagTable table = TagTable.open(archive)) {
            for (String number : List.of("V24-001", "V24-002", "V24-003")) {
                var paper = tenterbook.archive.Papers.of(archive.ledger(), number).readable().stream()
                        .filter(each ->
                                each.kind().equals("hang-tag") && each.market().equals("eu"))
                        .findFirst()
                        .orElseThrow();
                var issued = paper.pieces().stream()
                        .filter(each -> each.piece().value().equals(number))
                        .findFirst()
                        .orElseThrow();
                IssuedLabelStatus today = IssuedLabelStatus.of(
                        paper,
                        issued,
                        PieceReader.of(archive, archive.piece(number).orElseThrow()));
                assertThat(today.changes()).isNotEmpty();
                assertThat(eu(table, number).reasons())
                        .containsExactlyElementsOf(today.changes().stream()
                                .map(change -> change.part().inEnglish())
                                .distinct()
                                .toList());
            }
        }
    }

    @Test
    void aDeletedTableIsMadeAnewEqual() throws IOException {
        Map<String, List<Standing>> before;
        try (TagTable table = TagTable.open(archive)) {
            before = all(archive, table);
        }
        delete(archive.folder().derived());
        try (TagTable table = TagTable.open(archive)) {
            assertThat(all(archive, table)).isEqualTo(before);
        }
    }

    @Test
    void aTableDeletedWhileItIsOpenGoesOnAndIsThereAgainAtTheNextStart() throws IOException {
        try (TagTable table = TagTable.open(archive)) {
            assertThat(eu(table, "V24-001").state()).isEqualTo(State.CURRENT);
            delete(archive.folder().derived());
            rename(archive, "Another name");
            assertThat(eu(table, "V24-001").state()).isEqualTo(State.OUT_OF_DATE);
        }
        try (TagTable table = TagTable.open(archive)) {
            assertThat(eu(table, "V24-001").state()).isEqualTo(State.OUT_OF_DATE);
            assertThat(table.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void aDamagedTableIsMadeAnew() throws IOException {
        try (TagTable table = TagTable.open(archive)) {
            table.bringUp(Progress.UNWATCHED);
        }
        Files.writeString(archive.folder().derived().resolve("tags.db"), "no table at all, but long enough to be one");
        try (TagTable table = TagTable.open(archive)) {
            assertThat(eu(table, "V24-001").state()).isEqualTo(State.CURRENT);
            assertThat(table.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void aChangeOfTheStudioTellsOfThePiecesThatStandOtherwiseAndOfNoOther() {
        try (TagTable table = TagTable.open(archive)) {
            table.bringUp(Progress.UNWATCHED);
            long before = archive.ledger().lastSequence();
            assertThat(table.changedAfter(before, Progress.UNWATCHED)).isEmpty();
            rename(archive, "Another name");
            assertThat(table.changedAfter(before, Progress.UNWATCHED)).containsExactlyInAnyOrder("V24-001", "V24-003");
            assertThat(eu(table, "V24-001").reasons()).contains("maker");
            long then = archive.ledger().lastSequence();
            assertThat(table.changedAfter(then, Progress.UNWATCHED)).isEmpty();
            assertThat(table.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void aWithdrawnPieceStandsNowhereAndIsTold() {
        try (TagTable table = TagTable.open(archive)) {
            long none = archive.ledger().lastSequence();
            table.bringUp(Progress.UNWATCHED);
            create("V24-900");
            long before = archive.ledger().lastSequence();
            assertThat(table.changedAfter(none, Progress.UNWATCHED)).containsExactly("V24-900");
            assertThat(eu(table, "V24-900").state()).isEqualTo(State.REFUSED);
            archive.ledger().write("Inês", act -> {
                act.withdraw(Kinds.PIECE, "V24-900", 1, "");
                return null;
            });
            assertThat(table.changedAfter(before, Progress.UNWATCHED)).containsExactly("V24-900");
            assertThat(table.of(List.of("V24-900"))).isEmpty();
            assertThat(table.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void whatAKilledProcessLeftHalfDoneIsFoundAgain() {
        long before;
        try (TagTable table = TagTable.open(archive)) {
            table.bringUp(Progress.UNWATCHED);
            before = archive.ledger().lastSequence();
        }
        rename(archive, "Another name");
        // The process was killed after the first lot and before the sequence was written.
        try (TagRows rows = new TagRows(archive.folder().derived().resolve("tags.db"), TagTable.version())) {
            assertThat(rows.sequence()).isEqualTo(before);
            List<String> lot = List.of("V24-001");
            rows.keep(
                    lot, TagFinder.of(archive, false).of(lot), archive.ledger().lastSequence());
        }
        try (TagTable table = TagTable.open(archive)) {
            assertThat(table.changedAfter(before, Progress.UNWATCHED)).containsExactlyInAnyOrder("V24-001", "V24-003");
            assertThat(table.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void aTableOfAnotherLedgerIsMadeAnew() throws IOException {
        try (Archive other = restored("other")) {
            rename(other, "Another name");
            try (TagTable table = TagTable.open(other)) {
                assertThat(eu(table, "V24-001").state()).isEqualTo(State.OUT_OF_DATE);
            }
            create("V24-900");
            assertThat(archive.ledger().lastSequence()).isEqualTo(other.ledger().lastSequence());
            Files.createDirectories(archive.folder().derived());
            Files.copy(
                    other.folder().derived().resolve("tags.db"),
                    archive.folder().derived().resolve("tags.db"));
        }
        try (TagTable table = TagTable.open(archive)) {
            assertThat(eu(table, "V24-001").state()).isEqualTo(State.CURRENT);
            assertThat(table.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void aTableOfOtherRulesIsMadeAnew() throws SQLException {
        try (TagTable table = TagTable.open(archive)) {
            table.bringUp(Progress.UNWATCHED);
        }
        sql("UPDATE tag SET state = 'REFUSED', reasons = 'as the older rules had it'");
        sql("UPDATE good_for SET value = 'older rules' WHERE name = 'version'");
        try (TagTable table = TagTable.open(archive)) {
            assertThat(eu(table, "V24-001").state()).isEqualTo(State.CURRENT);
            assertThat(table.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void theCheckFindsARowThatTheLedgerDoesNotGiveAndARebuildMendsIt() throws SQLException {
        try (TagTable table = TagTable.open(archive)) {
            table.bringUp(Progress.UNWATCHED);
        }
        sql("UPDATE tag SET state = 'CURRENT' WHERE piece = 'V24-010' AND market = 'EU'");
        sql("DELETE FROM tag WHERE piece = 'V24-001'");
        sql("INSERT INTO tag VALUES ('Z99-001', 'EU', 'CURRENT', '', 1)");
        try (TagTable table = TagTable.open(archive)) {
            assertThat(table.check(Progress.UNWATCHED))
                    .extracting(finding -> finding.where())
                    .containsExactlyInAnyOrder(
                            "hang tags of piece V24-001", "hang tags of piece V24-010", "hang tags of piece Z99-001");
            table.rebuild(Progress.UNWATCHED);
            assertThat(table.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    @SuppressWarnings("rawtypes")
    void aPieceThatCannotBeReadKeepsNoOtherFromStanding() {
        Kind<Map> raw = new Kind<>(
                Kinds.PIECE.name(),
                Joined.with("", "piece"),
                new MappedCodec<>(new ObjectMapper(), Map.class),
                piece -> (String) piece.get("number"),
                piece -> List.of());
        try (TagTable table = TagTable.open(archive)) {
            archive.ledger()
                    .write("someone", act -> act.create(raw, Map.of("number", "V24-000", "photos", "of another form")));
            assertThat(table.of(List.of("V24-000"))).isEmpty();
            table.rebuild(Progress.UNWATCHED);
            assertThat(all(archive, table).keySet())
                    .isEqualTo(archive.ledger().allIdsEverUsed(Kinds.PIECE).stream()
                            .filter(number -> !number.equals("V24-000"))
                            .collect(Collectors.toSet()));
        }
    }

    @Test
    void aStoppedRebuildIsFinishedTheNextTime() {
        Progress stopping = new Progress() {
            @Override
            public void at(long done, long total, String what) {}

            @Override
            public boolean cancelled() {
                return true;
            }
        };
        try (TagTable table = TagTable.open(archive)) {
            assertThatThrownBy(() -> table.rebuild(stopping)).isInstanceOf(Progress.Cancelled.class);
            assertThat(all(archive, table)).hasSize(archive.ledger().count(Kinds.PIECE));
        }
    }
}
