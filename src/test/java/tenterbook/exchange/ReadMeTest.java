package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.ExaminationCodes;
import tenterbook.archive.record.StoredCodes;
import tenterbook.ledger.revision.Erasure;
import tenterbook.ledger.revision.Kind;

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
