package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static tenterbook.ledger.Things.BOARD;
import static tenterbook.ledger.Things.PRINT;

import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.ledger.Things.Board;
import tenterbook.ledger.Things.Opened;
import tenterbook.ledger.Things.Print;
import tenterbook.ledger.beside.Drafts;
import tenterbook.ledger.revision.Revision;

class LedgerTest {
    @TempDir
    Path root;

    private Opened opened;
    private Ledger ledger;

    @BeforeEach
    void open() {
        opened = new Opened(root);
        ledger = opened.ledger;
    }

    @AfterEach
    void close() {
        opened.close();
    }

    private void reopen() {
        opened.close();
        open();
    }

    private Saved<Board> save(Board board, int expected) {
        return ledger.write("test", act -> act.save(BOARD, board, expected, "why"));
    }

    @Test
    void aSavedRecordComesBackAfterReopeningWithAllItsVersions() {
        opened.board("B01", "Fig and wasp");
        save(new Board("B01", "Fig, wasp"), 1);
        reopen();

        assertThat(ledger.find(BOARD, "B01").orElseThrow().record()).isEqualTo(new Board("B01", "Fig, wasp"));
        assertThat(ledger.version(BOARD, "B01", 1).orElseThrow().record()).isEqualTo(new Board("B01", "Fig and wasp"));
        List<Revision> history = ledger.history(BOARD.key("B01"));
        assertThat(history).extracting(Revision::version).containsExactly(1, 2);
        assertThat(history.get(1).note()).isEqualTo("why");
        assertThat(history.get(1).writtenAt()).isEqualTo(Instant.parse("2024-03-05T10:15:00.123Z"));
        assertThat(history.get(1).previous()).isEqualTo(history.get(0).hash());
        assertThat(history.get(0).previous()).isEqualTo(Revision.NONE);
        assertThat(ledger.lastHash()).isEqualTo(history.get(1).hash());
        assertThat(opened.check()).isEmpty();
    }

    /** The hash as a stranger would find it: SHA-256 of the canonical JSON, with the JDK alone. */
    @Test
    void savingWhatIsThereAlreadyWritesNothing() {
        Saved<Board> first = opened.board("B01", "Fig");

        Saved<Board> again = save(new Board("B01", "Fig"), 1);

        assertThat(again.version()).isEqualTo(1);
        assertThat(again.sequence()).isEqualTo(first.sequence());
        assertThat(ledger.lastSequence()).isEqualTo(1);
    }

    @Test
    void aConflictShowsBothVersionsAndLosesNeither() {
        opened.board("B01", "Fig");
        save(new Board("B01", "Fig by Inês"), 1);

        Board mine = new Board("B01", "Fig by Tomé");
        Conflict conflict = catchThrowableOfType(Conflict.class, () -> save(mine, 1));

        assertThat(conflict.key()).isEqualTo(BOARD.key("B01"));
        assertThat(conflict.expected()).isEqualTo(1);
        assertThat(conflict.found()).isEqualTo(2);
        assertThat(conflict).hasMessageContaining("saved as version 2 while you were working from version 1");
        assertThat(ledger.version(BOARD, "B01", conflict.found()).orElseThrow().record())
                .isEqualTo(new Board("B01", "Fig by Inês"));
        assertThat(ledger.version(BOARD, "B01", conflict.expected())
                        .orElseThrow()
                        .record())
                .isEqualTo(new Board("B01", "Fig"));
        // The record in hand can still be saved on top, knowingly.
        assertThat(save(mine, conflict.found()).version()).isEqualTo(3);
        assertThat(ledger.history(BOARD.key("B01"))).hasSize(3);
    }

    @Test
    void anIdentifierIsNeverGivenTwiceNotEvenAfterWithdrawal() {
        opened.board("B01", "Fig");
        ledger.write("test", act -> {
            act.withdraw(BOARD, "B01", 1, "burnt");
            return null;
        });

        assertThat(ledger.find(BOARD, "B01")).isEmpty();
        assertThat(ledger.all(BOARD)).isEmpty();
        assertThat(ledger.count(BOARD)).isZero();
        assertThat(ledger.allIdsEverUsed(BOARD)).containsExactly("B01");
        assertThatThrownBy(() -> opened.board("B01", "Another"))
                .isInstanceOf(Conflict.class)
                .hasMessageContaining("never given twice");
        assertThat(ledger.history(BOARD.key("B01"))).hasSize(2);
        // Bringing the record itself back is a new revision of it.
        assertThat(save(new Board("B01", "Fig"), 2).version()).isEqualTo(3);
        assertThat(ledger.find(BOARD, "B01")).isPresent();
        assertThat(opened.check()).isEmpty();
    }

    @Test
    void recordsReadTogetherAreTheNewestOnesInUse() {
        opened.board("B01", "Fig");
        save(new Board("B01", "Fig and wasp"), 1);
        opened.board("B02 “é, 板", "Heron");
        opened.board("B03", "Swift");
        ledger.write("test", act -> {
            act.withdraw(BOARD, "B03", 1, "");
            return null;
        });

        assertThat(ledger.records(BOARD, List.of("B02 “é, 板", "B01", "B03", "B04")))
                .containsOnly(
                        java.util.Map.entry("B01", new Board("B01", "Fig and wasp")),
                        java.util.Map.entry("B02 “é, 板", new Board("B02 “é, 板", "Heron")));
        assertThat(ledger.records(PRINT, List.of("B01"))).isEmpty();
        assertThat(ledger.records(BOARD, List.of())).isEmpty();
    }

    @Test
    void withdrawingWhatNeverWasSaysSo() {
        assertThatThrownBy(() -> ledger.write("test", act -> {
                    act.withdraw(BOARD, "B99", 1, "");
                    return null;
                }))
                .isInstanceOf(Conflict.class)
                .hasMessageStartingWith("There is no board pair B99 to change.");
    }

    @Test
    void aRecordInUseCannotBeWithdrawn() {
        opened.board("B01", "Fig");
        opened.print("P1", "B01");

        assertThatThrownBy(() -> ledger.write("test", act -> {
                    act.withdraw(BOARD, "B01", 1, "");
                    return null;
                }))
                .isInstanceOf(StillReferenced.class)
                .hasMessage(
                        "The board-pair B01 cannot be withdrawn: it is named by print P1. Change those first; nothing was changed.");
        assertThat(ledger.find(BOARD, "B01")).isPresent();
        assertThat(ledger.lastSequence()).isEqualTo(2);
        assertThat(ledger.referencedBy(BOARD.key("B01"))).containsExactly(PRINT.key("P1"));
        assertThat(ledger.references(PRINT.key("P1"))).containsExactly(BOARD.key("B01"));

        ledger.write("test", act -> {
            act.withdraw(BOARD, "B01", 1, "");
            act.save(PRINT, new Print("P1", List.of()), 1, "");
            return null;
        });
        assertThat(ledger.find(BOARD, "B01")).isEmpty();
        assertThat(opened.check()).isEmpty();
    }

    @Test
    void anActThatNamesAMissingRecordIsRefusedAndNothingOfItIsWritten() {
        assertThatThrownBy(() -> ledger.write("test", act -> {
                    act.create(BOARD, new Board("B01", "Fig"));
                    return act.create(PRINT, new Print("P1", List.of("B01", "B02")));
                }))
                .isInstanceOf(StillReferenced.class)
                .hasMessageContaining("The print P1 names the board-pair B02, which is not in the archive");

        assertThat(ledger.lastSequence()).isZero();
        assertThat(ledger.find(BOARD, "B01")).isEmpty();
        assertThat(ledger.allIdsEverUsed(BOARD)).isEmpty();
        assertThat(ledger.references(PRINT.key("P1"))).isEmpty();
    }

    @Test
    void identifiersAreFoundByTheirBeginningWhateverItsCase() {
        ledger.write("test", act -> {
            for (String id : List.of("v24-012", "V24-013", "V25-001", "\u00dc24-1", "\u00fc24-2", "VX24%1", "VX24a1")) {
                act.create(BOARD, new Board(id, "Fig"));
            }
            return null;
        });

        assertThat(ledger.idsEverUsed(BOARD, "V24-")).containsExactlyInAnyOrder("v24-012", "V24-013");
        assertThat(ledger.idsEverUsed(BOARD, "\u00dc24-")).contains("\u00dc24-1", "\u00fc24-2");
        assertThat(ledger.idsEverUsed(BOARD, "vx24%")).contains("VX24%1");
        assertThat(ledger.idsEverUsed(BOARD, "")).hasSize(7);
    }

    @Test
    void anActThatFailsInTheMiddleIsUndoneAndTheChainGoesOn() {
        assertThatThrownBy(() -> ledger.write("test", act -> {
                    act.create(BOARD, new Board("B01", "Fig"));
                    throw new IllegalStateException("the power of the example");
                }))
                .isInstanceOf(IllegalStateException.class);
        opened.board("B02", "Heron");

        assertThat(ledger.find(BOARD, "B01")).isEmpty();
        assertThat(ledger.find(BOARD, "B02").orElseThrow().sequence()).isEqualTo(1);
        assertThat(opened.check()).isEmpty();
    }

    @Test
    void withinAnActRecordsMayBeSavedInAnyOrder() {
        ledger.write("test", act -> {
            act.create(PRINT, new Print("P1", List.of("B01")));
            assertThat(act.find(PRINT, "P1")).isPresent();
            act.create(BOARD, new Board("B01", "Fig"));
            assertThat(act.idsEverUsed(BOARD, "")).containsExactly("B01");
            return null;
        });

        assertThat(ledger.referencedBy(BOARD.key("B01"))).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "plain",
                "",
                "a\nb\r\n\t",
                "€ \ud83d\ude00 \ufb33",
                "\u0001\u001f",
                "a\u0000b",
                "\ud800",
                "'; DROP TABLE revisions; --"
            })
    void textOfAnyKindKeepsItsHash(String text) {
        ledger.write(text, act -> act.save(BOARD, new Board("B01", text), 0, text));
        reopen();

        assertThat(opened.check()).isEmpty();
        if (!text.equals("\ud800")) {
            assertThat(ledger.find(BOARD, "B01").orElseThrow().record().image()).isEqualTo(text);
            assertThat(ledger.after(0, 1).get(0).note()).isEqualTo(text);
        }
    }

    @Test
    void followersAreToldAndOneThatFailsDoesNotMakeASaveLookLost() {
        List<Long> told = new ArrayList<>();
        ledger.follow(sequence -> {
            throw new IllegalStateException("a follower of the example fails");
        });
        ledger.follow(told::add);

        opened.board("B01", "Fig");

        assertThat(told).containsExactly(1L);
    }

    @Test
    void draftsAreKeptReplacedFoundAndDiscardedAndAreNoPartOfTheLedger() {
        Drafts drafts = ledger.drafts();
        drafts.keep("piece/V24-001", "title=Mar");
        drafts.keep("piece/V24-001", "title=Maré");
        drafts.keep("board/B01", "image=Fig");
        reopen();

        assertThat(ledger.drafts().find("piece/V24-001").orElseThrow().body()).isEqualTo("title=Maré");
        assertThat(ledger.drafts().find("piece/V24-001").orElseThrow().savedAt())
                .isEqualTo(Instant.parse("2024-03-05T10:15:00Z"));
        assertThat(ledger.drafts().all()).hasSize(2);
        ledger.drafts().discard("piece/V24-001");
        assertThat(ledger.drafts().find("piece/V24-001")).isEmpty();
        assertThat(ledger.lastSequence()).isZero();
    }

    @Test
    void peopleWithAnSqliteShellSeeOrdinaryColumns() throws SQLException {
        opened.board("B01", "Fig");
        save(new Board("B01", "Fig and wasp"), 1);
        opened.board("B02", "Heron");
        ledger.write("test", act -> {
            act.withdraw(BOARD, "B02", 1, "");
            return null;
        });

        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + root.resolve("ledger.db"));
                var statement = connection.createStatement()) {
            List<String> rows = new ArrayList<>();
            try (var row = statement.executeQuery("SELECT id, image FROM board_pairs")) {
                while (row.next()) {
                    rows.add(row.getString(1) + " " + row.getString(2));
                }
            }
            assertThat(rows).containsExactly("B01 Fig and wasp");
            List<String> views = new ArrayList<>();
            try (var row = statement.executeQuery("SELECT name FROM sqlite_schema WHERE type = 'view'")) {
                while (row.next()) {
                    views.add(row.getString(1));
                }
            }
            assertThat(views).contains("pieces", "clampings", "cloths", "lots", "parties", "photographs");
            for (String view : views) {
                statement.executeQuery("SELECT * FROM " + view).close();
            }
        }
    }

    @Test
    void aCopyIsAWholeLedgerOfItsOwn(@TempDir Path other) {
        opened.board("B01", "Fig");
        ledger.copyTo(other.resolve("ledger.db"));

        try (Opened copy = new Opened(other)) {
            assertThat(copy.check()).isEmpty();
            assertThat(copy.ledger.lastHash()).isEqualTo(ledger.lastHash());
        }
    }
}
