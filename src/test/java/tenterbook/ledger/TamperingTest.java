package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.ledger.Things.Opened;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;

class TamperingTest {
    @TempDir
    Path root;

    @BeforeEach
    void aLedgerOfThreeRevisions() {
        try (Opened opened = new Opened(root)) {
            opened.board("B01", "Fig");
            opened.board("B02", "Heron");
            opened.board("B03", "Swifts");
            assertThat(opened.check()).isEmpty();
        }
    }

    private List<Finding> findings() {
        try (Opened opened = new Opened(root)) {
            return opened.check();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE revisions SET note = 'changed' WHERE sequence = 2",
                "UPDATE revisions SET hash = hash",
                "INSERT OR REPLACE INTO revisions SELECT * FROM revisions WHERE sequence = 2"
            })
    void sqliteItselfRefusesToChangeARevision(String sql) {
        assertThatThrownBy(() -> Things.byHand(root, sql)).isInstanceOf(SQLException.class);
        assertThat(findings()).isEmpty();
    }

    @Test
    void sqliteItselfRefusesToDeleteARevision() {
        assertThatThrownBy(() -> Things.byHand(root, "DELETE FROM revisions WHERE sequence = 3"))
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("A revision is never deleted");
        assertThatThrownBy(() -> Things.byHand(root, "UPDATE revisions SET author = 'x' WHERE sequence = 3"))
                .hasMessageContaining("A revision is never changed; save a new one");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "record = '{\"id\":\"B02\",\"image\":\"Herons\"}' | its public part does not give its digest",
                "record = '{\"image\":\"Heron\",\"id\":\"B02\"}' | is not in canonical form",
                "public_salt = '00' | its public part does not give its digest",
                "public_digest = hash | its public part does not give its digest",
                "private_digest = hash | its private part does not give its digest",
                "before_digest = hash | does not commit to the revisions of format 1 before it",
                "written_at = '2020-01-01T00:00:00Z' | its contents do not give its hash",
                "act = 'withdraw' | its contents do not give its hash",
                "version = 7 | is version 7 where 1 was due",
                "previous_hash = replace(previous_hash, substr(previous_hash, 1, 1), CASE substr(previous_hash, 1, 1) WHEN 'f' THEN 'e' ELSE 'f' END) | does not name the hash",
                "hash = replace(hash, substr(hash, 1, 1), CASE substr(hash, 1, 1) WHEN 'f' THEN 'e' ELSE 'f' END) | its contents do not give its hash"
            })
    void aRevisionChangedBehindTheTriggersIsFoundAndNamed(String change, String what) throws SQLException {
        Things.byHand(
                root,
                "DROP TRIGGER revisions_are_never_changed",
                "UPDATE revisions SET " + change + " WHERE sequence = 2");

        assertThat(findings()).anySatisfy(finding -> {
            assertThat(finding.where()).isEqualTo("revision 2 (board-pair B02)");
            assertThat(finding.what()).contains(what);
        });
    }

    @Test
    void aRevisionThatCannotEvenBeReadIsStillNamed() throws SQLException {
        Things.byHand(
                root,
                "DROP TRIGGER revisions_are_never_changed",
                "UPDATE revisions SET hash = upper(hash), written_at = '2020-99-99T99:99:99Z' WHERE sequence = 2");

        assertThat(findings())
                .anySatisfy(finding -> assertThat(finding.toString()).contains("revision 2"));
    }

    @Test
    void aRevisionTakenOutOfTheMiddleIsMissed() throws SQLException {
        Things.byHand(
                root,
                "DROP TRIGGER revisions_are_never_deleted",
                "DELETE FROM current WHERE sequence = 2",
                "DELETE FROM revisions WHERE sequence = 2");

        assertThat(findings())
                .extracting(Finding::toString)
                .contains(
                        "revision 3 (board-pair B03): follows revision 1: one or more are missing",
                        "revision 3 (board-pair B03): does not name the hash of the revision before it");
    }

    @Test
    void whatStandsInCurrentIsComparedWithTheRevisions() throws SQLException {
        Things.byHand(root, "DELETE FROM current WHERE id = 'B03'");

        assertThat(findings())
                .extracting(Finding::toString)
                .containsExactly("board-pair B03: its newest revision is 3, but ‘current’ says null");
    }

    @Test
    void aCheckCanBeStopped() {
        try (Opened opened = new Opened(root)) {
            Progress stop = new Progress() {
                @Override
                public void at(long done, long total, String what) {
                    assertThat(done).isEqualTo(3);
                }

                @Override
                public boolean cancelled() {
                    return true;
                }
            };
            assertThatThrownBy(() -> opened.ledger.check().run(stop)).isInstanceOf(Progress.Cancelled.class);
        }
    }
}
