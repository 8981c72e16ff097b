package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.ExaminationCodes;
import tenterbook.archive.record.StoredCodes;
import tenterbook.ledger.revision.Erasure;
import tenterbook.ledger.revision.Kind;
import tenterbook.measure.DateText;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.history.Custody;

/** The explanation in a packed bag leaves out nothing that a reader without this program meets in it. */
class ReadMeTest {
    @TempDir
    static Path around;

    private static Bag bag;
    private static String text;

    @BeforeAll
    static void pack() throws Exception {
        bag = Demo.bag(around);
        text = Files.readString(bag.folder().resolve("data/READ-ME-FIRST.txt"));
    }

    private static String between(String from, String to) {
        Matcher found = Pattern.compile(from + "(.*?)" + to, Pattern.DOTALL).matcher(text);
        assertThat(found.find()).as("a passage from %s to %s", from, to).isTrue();
        return found.group(1);
    }

    /** Words of a list such as 'front, back or other', over as many lines as it takes. */
    private static List<String> listed(String passage) {
        return List.of(passage.strip().replaceAll("\\s+", " ").split(", | or (?=other$)"));
    }

    @Test
    void everyKindOfRecordIsExplained() {
        List<String> explained = Pattern.compile("(?m)^ {19}(\\S+) {2,}\\S")
                .matcher(between("\n  kind ", "\n  id "))
                .results()
                .map((MatchResult line) -> line.group(1))
                .toList();
        assertThat(explained)
                .containsExactlyInAnyOrderElementsOf(Stream.concat(Kinds.ALL.stream(), Stream.of(Erasure.KIND))
                        .map(Kind::name)
                        .toList());
    }

    @Test
    void everyRoleAndEveryViewOfAPhotographIsNamed() {
        assertThat(listed(between("each with a \"role\":", "\\.")))
                .containsExactlyElementsOf(StoredCodes.PHOTO_ROLE.all());
        assertThat(listed(between("each with a \"view\":", ";")))
                .containsExactlyElementsOf(ExaminationCodes.PHOTO_VIEW.all());
    }

    /** Each event with its day or without, entered in any order: what the query finds is compared with what the program says. */
    @Test
    void theQueryOfTheGuideFindsTheEventThatDecides() throws Exception {
        Matcher found =
                Pattern.compile("```sql\n(.*?)```", Pattern.DOTALL).matcher(Files.readString(Path.of("README.md")));
        assertThat(found.find()).isTrue();
        Path folder = around.resolve("events");
        Map<String, Event> decided = new HashMap<>();
        Random random = new Random(7);
        try (Archive archive = Archive.open(folder, Demo.CLOCK)) {
            archive.ledger().write("test", ledger -> {
                for (int i = 0; i < 9; i++) {
                    ledger.create(Kinds.PARTY, new Party(new PartyId("person-" + i), "Person " + i, "", "", ""));
                }
                for (int i = 0; i < 150; i++) {
                    Piece piece = Kinds.PIECE.codec().fromText("{\"number\": \"V24-%03d\"}".formatted(i + 1));
                    List<Event> events = Stream.generate(() -> event(random))
                            .limit(random.nextInt(6))
                            .toList();
                    ledger.create(Kinds.PIECE, piece.withEvents(events, null, null, "", null));
                    decided.put(piece.number().value(), Custody.of(events).decidedBy());
                }
                return null;
            });
        }
        int rows = 0;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("ledger.db"));
                Statement query = connection.createStatement();
                ResultSet row = query.executeQuery(found.group(1))) {
            while (row.next()) {
                rows++;
                Event last = decided.get(row.getString("number"));
                assertThat(row.getString("event"))
                        .isEqualTo(last == null ? null : StoredCodes.EVENT_KIND.code(last.kind()));
                assertThat(row.getString("day"))
                        .isEqualTo(
                                last == null || !last.when().known()
                                        ? null
                                        : last.when().entered());
                assertThat(row.getString("person"))
                        .isEqualTo(last == null ? null : last.party().value());
            }
        }
        assertThat(rows).isEqualTo(150);
        assertThat(decided.values()).filteredOn(Objects::nonNull).hasSizeGreaterThan(100);
    }

    private static Event event(Random random) {
        EventKind kind = EventKind.values()[random.nextInt(EventKind.values().length)];
        String[] days = {"", "2024", "March 2024", "2024-03-09", "before 2024-05-01", "2023-11-30"};
        return new Event(
                kind,
                DateText.read(days[random.nextInt(days.length)]),
                null,
                new PartyId("person-" + random.nextInt(9)),
                null,
                "",
                "",
                false);
    }

    @Test
    void everyViewOfTheDatabaseIsNamed() throws Exception {
        List<String> views = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection(
                        "jdbc:sqlite:" + bag.folder().resolve("data/ledger.db"));
                Statement query = connection.createStatement();
                ResultSet rows = query.executeQuery("SELECT name FROM sqlite_master WHERE type = 'view'")) {
            while (rows.next()) {
                views.add(rows.getString(1));
            }
        }
        String named = between("\n  ledger\\.db ", "\n  photos/ ");
        assertThat(views).isNotEmpty().allSatisfy(view -> assertThat(named).containsPattern("\\b" + view + "\\b"));
    }
}
