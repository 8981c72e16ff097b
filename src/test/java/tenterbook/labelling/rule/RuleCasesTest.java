package tenterbook.labelling.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.labelling.Samples;
import tenterbook.measure.OwnTable;
import tenterbook.piece.Category;

/** What each rule asks, refuses or prints, with the passage that answers for it; and that passages are what was read. */
class RuleCasesTest {
    /**
     * Texts read after the list of facts was made, of which this test can compare nothing: the four sections of 15 USC; of the
     * regulation Articles 3 to 20 and 24 and Annexes I and III to VII; of C.R.C., c. 1551 sections 1 to 8; the Bureau's example.
     */
    private static final Pattern READ_SINCE = Pattern.compile(
            "15 USC (68|68b|70|70b)\\(.*|Reg\\. \\(EU\\) 1007/2011.*|C\\.R\\.C\\., c\\. 1551.*|16 CFR 303\\.12\\(b\\).*|Competition Bureau.*");

    static Stream<Arguments> cases() {
        return new BufferedReader(new InputStreamReader(
                        RuleCasesTest.class.getResourceAsStream("/label/rule_cases.csv"), StandardCharsets.UTF_8))
                .lines()
                .filter(line -> !line.startsWith("#") && !line.startsWith("market;"))
                .map(Arguments::of);
    }

    /** One line of the file. */
    record Arguments(List<String> cells) {
        static Arguments of(String line) {
            return new Arguments(List.of(line.split(";", -1)));
        }

        @Override
        public String toString() {
            return String.join(" ", cells);
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void aRuleSpeaksWhereItShouldAndCitesWhatWasRead(Arguments each) {
        List<String> c = each.cells;
        assertThat(c).hasSize(12);
        List<Component> cloth = List.of(new Component("", "cloth", FibreStatementTest.shares(c.get(2)), c.get(4)));
        FibreStatement statement = FibreStatement.of(
                Market.valueOf(c.get(0)),
                new Article(Category.valueOf(c.get(1)), cloth, c.get(3), c.get(5), Samples.PARTICULAR, c.get(6)));
        List<Map.Entry<String, Rule>> found = new ArrayList<>();
        String outcome = c.get(7);
        if (!outcome.equals("REFUSED") && !outcome.equals("LINE")) {
            statement.questions().forEach(q -> found.add(Map.entry(q.asks().inEnglish(), q.rule())));
        }
        if (outcome.equals("REFUSED")) {
            statement.refusals().forEach(r -> found.add(Map.entry(r.found().inEnglish(), r.rule())));
        }
        if (outcome.equals("LINE") || outcome.equals("SILENT")) {
            statement.lines().forEach(line -> found.add(Map.entry(line.text(), line.rule())));
        }
        List<Rule> rules = found.stream()
                .filter(entry -> entry.getKey().contains(c.get(8)))
                .map(Map.Entry::getValue)
                .toList();
        if (outcome.equals("SILENT")) {
            assertThat(rules).isEmpty();
            return;
        }
        assertThat(rules).as(found.toString()).anySatisfy(rule -> {
            assertThat(rule.id()).isEqualTo(c.get(9));
            assertThat(rule.citation()).contains(c.get(10));
            assertThat(rule.passage()).contains(c.get(11));
            assertThat(rule.passage().isEmpty()).isEqualTo(c.get(11).isEmpty());
        });
    }

    @Test
    void readStandsOnlyBesideAPassage() {
        for (String table : List.of("/label/rules.csv", "/label/fibre-names.csv")) {
            assertThat(OwnTable.rows(table))
                    .allSatisfy(row -> assertThat(row.get("status").startsWith("read"))
                            .isEqualTo(!row.get("passage").isBlank()));
        }
    }

    /** Against the list of passages that were read, where it lies beside the checkout. */
    @Test
    void everyPassageStandsInTheListOfWhatWasReadOrInATextReadSince() throws IOException {
        String reference = System.getProperty("reference.folder", "");
        assumeTrue(!reference.isEmpty(), "Skipped: -Dreference.folder names no folder");
        String facts =
                plain(Files.readString(Path.of(reference, "facts_read.csv")).replace("\"\"", "\""));
        List<CSVRecord> rows = new ArrayList<>(OwnTable.rows("/label/rules.csv"));
        rows.addAll(OwnTable.rows("/label/fibre-names.csv"));
        assertThat(rows)
                .filteredOn(row -> !row.get("passage").isBlank())
                .allSatisfy(
                        row -> assertThat(READ_SINCE.matcher(row.get("source")).matches()
                                        || facts.contains(plain(row.get("passage"))))
                                .as(row.toString())
                                .isTrue());
    }

    private static String plain(String text) {
        return text.replaceAll("\\s+", " ");
    }
}
