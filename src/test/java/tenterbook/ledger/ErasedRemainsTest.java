package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.ledger.People.Opened;
import tenterbook.ledger.People.Work;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Erasure;

/** An erasure excuses what it took out, and commits to what it left. */
class ErasedRemainsTest {
    private static final String REASON = "asked for by the person";
    private static final String WHAT =
            "what an erasure left of its private part does not give the digest that the erasure committed to";

    @TempDir
    Path root;

    /** The buyer in revision 1, a gallery in 2, a piece that was sold to the one and shown in the other in 3. */
    private void fill(int format) {
        Work work = People.work(
                "V24-001", "Maré", "vermia", People.sold("buyer-1", "a gift"), People.sold("vermia", "back"));
        People.fill(root, format, work);
    }

    private void erase(String id) {
        // With random salts, since those of the tests begin anew at each opening.
        try (ArchiveFolder folder = ArchiveFolder.hold(root);
                Ledger ledger = Ledger.open(folder, Things.CLOCK, List.of(People.PERSON, People.WORK))) {
            ledger.erase("Inês", People.PERSON, id, REASON);
            assertThat(ledger.check().run(Progress.UNWATCHED)).isEmpty();
        }
    }

    private void found(String trigger, String sql, int sequence) throws SQLException {
        Things.byHand(root, "DROP TRIGGER " + trigger, sql);
        try (Opened opened = new Opened(root)) {
            assertThat(opened.check())
                    .anyMatch(finding -> finding.startsWith("revision " + sequence) && finding.contains(WHAT));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "private_parts_are_only_redacted | UPDATE private_parts SET fields = replace(fields, '160.00', '900.00') WHERE sequence = 3 | 3",
                "private_parts_are_only_redacted | UPDATE private_parts SET author = 'Mallory' WHERE sequence = 3 | 3",
                "private_parts_are_only_redacted | UPDATE private_parts SET note = 'never sold' WHERE sequence = 2 | 2",
                "private_parts_are_only_redacted | UPDATE private_parts SET id = 'other' WHERE sequence = 2 | 2",
                "private_parts_are_only_erased | DELETE FROM private_parts WHERE sequence = 3 | 3",
                "private_parts_are_only_added | INSERT INTO private_parts VALUES (1, '', 'Inês', '', 'somebody', '{}', 1) | 1",
                "remains_are_only_deleted | DELETE FROM remains WHERE sequence = 3 | 3",
                "remains_are_never_changed | UPDATE remains SET salt = replace(salt, substr(salt, 1, 1), 'x') WHERE sequence = 3 | 3"
            })
    void whatAnErasureLeftOfFormat2CannotBeChangedUnseen(String trigger, String sql, int sequence) throws Exception {
        fill(2);
        erase("buyer-1");
        found(trigger, sql, sequence);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "UPDATE revisions SET record = replace(record, '160.00', '900.00') WHERE sequence = 3 | 3",
                "UPDATE revisions SET author = 'Mallory' WHERE sequence = 3 | 3",
                "UPDATE revisions SET note = 'never sold' WHERE sequence = 2 | 2",
                "UPDATE revisions SET author = 'Mallory' WHERE sequence = 1 | 1"
            })
    void whatAnErasureLeftOfFormat1CannotBeChangedUnseen(String sql, int sequence) throws Exception {
        fill(1);
        erase("buyer-1");
        found("revisions_are_never_changed", sql, sequence);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aLaterErasureCommitsAnewAndTheOlderSaltIsGone(int format) throws Exception {
        fill(format);
        erase("buyer-1");
        List<String> before = salts();
        erase("vermia");

        assertThat(salts()).isNotEmpty().doesNotContainAnyElementsOf(before);
        if (format == 1) {
            found("revisions_are_never_changed", "UPDATE revisions SET note = 'x' WHERE sequence = 3", 3);
        } else {
            found("private_parts_are_only_redacted", "UPDATE private_parts SET note = 'x' WHERE sequence = 3", 3);
        }
    }

    /** Those of the revisions that both erasures touch. */
    private List<String> salts() {
        return Jdbi.create("jdbc:sqlite:" + root.resolve("ledger.db"))
                .withHandle(handle -> handle.select("SELECT salt FROM remains WHERE sequence IN (2, 3)")
                        .mapTo(String.class)
                        .list());
    }

    @Test
    void theSaltIsInNoPublicPart() {
        fill(2);
        erase("buyer-1");
        List<String> salts = salts();
        try (Opened opened = new Opened(root)) {
            assertThat(opened.ledger.after(0, 100))
                    .noneMatch(revision ->
                            salts.stream().anyMatch(revision.publicText().orElseThrow()::contains));
            Erasure erasure =
                    opened.ledger.find(Erasure.KIND, "erasure-1").orElseThrow().record();
            assertThat(erasure.remains()).containsOnlyKeys(2L, 3L);
            assertThat(opened.ledger.check().notCheckable()).isEmpty();
        }
    }

    /** As the programs before schema 6 erased; not to be changed. */
    @Test
    void anErasureOfAnOlderProgramIsNoDamageAndIsNamedWhereAsked() throws Exception {
        fill(2);
        long sequence;
        try (Opened opened = new Opened(root)) {
            sequence = opened.ledger
                    .write(
                            "Inês",
                            act -> act.create(
                                    Erasure.KIND,
                                    new Erasure("erasure-1", "2024-03-05", REASON, "party", "gone", List.of(3L), null)))
                    .sequence();
            assertThat(opened.ledger.after(sequence - 1, 1).get(0).json()).doesNotContain("remains");
        }
        Things.byHand(
                root,
                "INSERT INTO erased (sequence, erasure) VALUES (3, %d)".formatted(sequence),
                "UPDATE private_parts SET salt = '', note = '', redacted = 1 WHERE sequence = 3",
                "UPDATE erased SET done = 1");
        try (Opened opened = new Opened(root)) {
            assertThat(opened.check()).isEmpty();
            assertThat(opened.ledger.check().notCheckable())
                    .extracting(Finding::toString)
                    .singleElement()
                    .asString()
                    .startsWith("revision 3: what remains of its private part cannot be checked");
        }
        erase("buyer-1");
    }

    @Test
    void sqliteItselfRefusesASaltWithoutAnErasure() {
        fill(2);
        erase("buyer-1");
        for (String sql : List.of(
                "UPDATE remains SET salt = salt || '0'",
                "DELETE FROM remains",
                "INSERT OR REPLACE INTO remains SELECT * FROM remains")) {
            assertThatThrownBy(() -> Things.byHand(root, sql)).isInstanceOf(SQLException.class);
        }
    }

    @Test
    void anErasureThatCannotBeReadIsRefused() {
        assertThatThrownBy(() -> Erasure.KIND.codec().fromText("""
                        {"day":"2024-03-05","handle":"h","id":"erasure-1","kind":"party","reason":"r",
                        "remains":{"3":"no digest"},"sequences":[3]}""")).isInstanceOf(IllegalArgumentException.class);
    }
}
