package tenterbook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.app.Ran.run;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.exchange.RestoredSample;

/** However the sample archive is damaged, {@code check} prints everything it finds, each fault once, and ends with 1. */
class CheckEverythingTest {
    @TempDir
    Path around;

    private Path studio;

    @BeforeEach
    void restore() {
        studio = around.resolve("studio");
        RestoredSample.copyTo(studio);
    }

    private void sql(String... statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + studio.resolve("ledger.db"));
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    /** Changes revisions past the trigger, which is put back as it was. */
    private void alter(String... statements) throws SQLException {
        List<String> all = new ArrayList<>(List.of("DROP TRIGGER revisions_are_never_changed"));
        all.addAll(List.of(statements));
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + studio.resolve("ledger.db"));
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT sql FROM sqlite_schema WHERE name = 'revisions_are_never_changed'")) {
            all.add(row.getString(1));
        }
        sql(all.toArray(String[]::new));
    }

    @ParameterizedTest
    @ValueSource(strings = {"{}", "null", "{\"id\":7}"})
    void everyKindOfUnreadableRecordIsOneFindingAndTheRestIsChecked(String record) throws SQLException {
        List<String> kinds = new ArrayList<>();
        int changed = 0;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + studio.resolve("ledger.db"));
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT c.kind || ' ' || min(c.id), r.record FROM current AS c"
                        + " JOIN revisions AS r ON r.sequence = c.sequence WHERE c.kind <> 'studio' GROUP BY c.kind")) {
            while (row.next()) {
                kinds.add(row.getString(1));
                // All of a person is private, so that the public part is empty already.
                changed += row.getString(2).equals(record) ? 0 : 1;
            }
        }
        assertThat(kinds).hasSizeGreaterThan(8);
        String those = "' WHERE sequence IN (SELECT sequence FROM current WHERE kind || ' ' || id IN"
                + " (SELECT kind || ' ' || min(id) FROM current WHERE kind <> 'studio' GROUP BY kind))";
        alter(
                "UPDATE revisions SET record = '" + record + those,
                "UPDATE current_texts SET record = '" + record + those);
        sql("DELETE FROM reference WHERE from_id = 'V24-003' AND to_kind = 'clamping'");

        Ran ran = run("check", "--archive", studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).isEmpty();
        for (String key : kinds) {
            assertThat(ran.lines())
                    .filteredOn(line -> line.startsWith(key + ":"))
                    .as(key)
                    .hasSize(1);
        }
        assertThat(ran.lines())
                .filteredOn(line -> line.contains("its public part does not give its digest"))
                .hasSize(changed);
        assertThat(ran.lines())
                .anyMatch(line -> line.startsWith("piece V24-003: names the clamping")
                        && line.contains("the table ‘reference’ does not say so"));
        assertThat(ran.lines())
                .as("one unreadable record keeps no other out of the index")
                .noneMatch(line -> line.contains("missing from the search index"));
        assertThat(ran.lines().get(ran.lines().size() - 1)).endsWith("things are wrong.");
    }

    /** As a failing disk leaves them: a clamping's charges lost the name of their lot, and a photograph and a paper cannot be read. */
    @Test
    void flippedBytesGiveOneAdviceThatPromisesNothingDamaged() throws SQLException {
        List<String> flips = new ArrayList<>();
        for (String table : List.of("revisions", "current_texts")) {
            String those =
                    " SET record = '{}' WHERE sequence IN" + " (SELECT min(sequence) FROM current WHERE kind = '%s')";
            flips.add("UPDATE " + table + " SET record = replace(record, '\"lot\":', '\"lop\":')");
            flips.add("UPDATE " + table + those.formatted("photo"));
            flips.add("UPDATE " + table + those.formatted("issued-paper"));
        }
        alter(flips.toArray(String[]::new));
        Ran ran = run("check", "--archive", studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).contains("its public part does not give its digest", "search index");
        assertThat(ran.lines())
                .filteredOn(line -> line.contains("What is safe:"))
                .singleElement()
                .asString()
                .startsWith("What is safe: every revision, photograph and paper that is not named above.");
        assertThat(ran.lines())
                .filteredOn(line -> line.startsWith("papers/"))
                .isNotEmpty()
                .allMatch(line -> line.contains("Keep the file"));
    }

    @Test
    void anUnreadableStudioDoesNotEndTheCheck() throws SQLException {
        alter(
                "UPDATE revisions SET record = '{}' WHERE kind = 'studio'",
                "UPDATE current_texts SET record = '{}' WHERE sequence IN"
                        + " (SELECT sequence FROM revisions WHERE kind = 'studio')",
                "UPDATE revisions SET record = '{}' WHERE kind = 'lot'");
        Ran ran = run("check", "--archive", studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).isEmpty();
        assertThat(ran.lines()).anyMatch(line -> line.startsWith("lot "));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "DROP TABLE reference",
                "DROP TABLE drafts",
                "DROP VIEW newest",
                "UPDATE current SET id = 'x' WHERE kind = 'photo' AND id = (SELECT min(id) FROM current WHERE kind = 'photo')",
                "UPDATE current SET sequence = 9999 WHERE id = 'V24-001'"
            })
    void aLedgerThatWasTakenApartIsToldWithoutAStackTrace(String change) throws SQLException {
        alter("UPDATE revisions SET written_at = '2024-01-08T09:12:01Z' WHERE sequence = 1", change);
        Ran ran = run("check", "--archive", studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).isEmpty();
        assertThat(ran.lines())
                .hasSizeGreaterThan(2)
                .anyMatch(line -> line.contains("revision 1 ") && line.contains("do not give its hash"));
    }

    @Test
    void whatIsNotOursInTheLedgerIsFoundAndNotPacked() throws SQLException {
        sql(
                "CREATE TRIGGER quiet AFTER INSERT ON revisions BEGIN DELETE FROM drafts; END",
                "CREATE VIEW \"my list\" AS SELECT id FROM newest",
                "CREATE TABLE notes (note TEXT PRIMARY KEY)",
                "CREATE INDEX by_author ON revisions (author)",
                "DROP VIEW pieces");
        Ran ran = run("check", "--archive", studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.lines())
                .as("five findings, one line of advice, the sum")
                .hasSize(7)
                .anyMatch(line -> line.contains("has a trigger quiet that is not ours"))
                .anyMatch(line -> line.endsWith("DROP VIEW \"my list\";"))
                .anyMatch(line -> line.contains("has a table notes that is not ours"))
                .anyMatch(line -> line.contains("has an index by_author that is not ours"))
                .anyMatch(line -> line.contains("lacks the view pieces"));

        Ran packed = run("pack", "--archive", studio, "--to", around.resolve("bag"));
        assertThat(packed.code()).isEqualTo(1);
        assertThat(packed.err()).contains("has a trigger quiet").contains("lacks the view pieces");
        assertThat(around.resolve("bag")).doesNotExist();
    }
}
