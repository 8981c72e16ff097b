package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
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
import tenterbook.piece.Status;
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

    private static String query(String text, String around) {
        Matcher found = Pattern.compile(around, Pattern.DOTALL).matcher(text);
        assertThat(found.find()).as(around).isTrue();
        return found.group(1);
    }

    /** Each event with its day or without, entered in any order: what the query finds is compared with what the program goes through. */
    @Test
    void theQueryOfBothTextsGivesTheHistoryOfEachPieceAsTheProgramReadsIt() throws Exception {
        String query = query(Files.readString(Path.of("README.md")), "```sql\n(.*?);\n```");
        String inBag = query(text, "ledger\\.db \"(SELECT number, title, status[^\"]*)\"");
        assertThat(inBag.replaceAll("\\s+", " ")).isEqualTo(query.replaceAll("\\s+", " "));
        Path folder = around.resolve("events");
        List<List<String>> expected = new ArrayList<>();
        Random random = new Random(7);
        try (Archive archive = Archive.open(folder, Demo.CLOCK)) {
            archive.ledger().write("test", ledger -> {
                for (int i = 0; i < 9; i++) {
                    ledger.create(Kinds.PARTY, new Party(new PartyId("person-" + i), "Person " + i, "", "", ""));
                }
                for (int i = 0; i < 150; i++) {
                    String number = "V24-%03d".formatted(i + 1);
                    List<Event> events = Stream.generate(() -> event(random))
                            .limit(random.nextInt(7))
                            .toList();
                    Piece piece = Kinds.PIECE.codec().fromText("{\"number\": \"%s\"}".formatted(number));
                    Status typed = i % 5 == 0 ? Status.ON_LOAN : null;
                    ledger.create(Kinds.PIECE, piece.withEvents(events, typed, null, "", null));
                    String before = typed == null ? null : StoredCodes.STATUS.code(typed);
                    Custody.inTime(events).forEach(each -> expected.add(line(number, before, each)));
                    if (events.isEmpty()) {
                        expected.add(Arrays.asList(number, before, null, null, null, null));
                    }
                }
                return null;
            });
        }
        List<List<String>> found = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("ledger.db"));
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(query)) {
            while (row.next()) {
                found.add(Arrays.asList(
                        row.getString("number"),
                        row.getString("typed"),
                        row.getString("day"),
                        row.getString("event"),
                        row.getString("unsure"),
                        row.getString("person")));
            }
        }
        assertThat(found).hasSizeGreaterThan(300).isEqualTo(expected);
    }

    private static List<String> line(String number, @Nullable String typed, Event event) {
        return Arrays.asList(
                number,
                typed,
                event.when().recorded() ? event.when().entered() : null,
                StoredCodes.EVENT_KIND.code(event.kind()),
                event.unsure() ? "1" : null,
                "Person " + event.party().value().substring("person-".length()));
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
                random.nextInt(4) == 0);
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
