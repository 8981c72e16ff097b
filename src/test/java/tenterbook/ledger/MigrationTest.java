package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.ledger.Things.Board;
import tenterbook.ledger.Things.Opened;
import tenterbook.ledger.Things.Print;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.OlderLedgers;
import tenterbook.ledger.revision.Revision;

class MigrationTest {
    @TempDir
    Path root;

    private static Flyway flyway(String url, String target) {
        return Flyway.configure()
                .dataSource(url, null, null)
                .locations("classpath:db/migration")
                .target(target)
                .loggers("slf4j")
                .load();
    }

    static Stream<String> everyVersion() {
        return Arrays.stream(flyway("jdbc:sqlite::memory:", "latest").info().all())
                .map(MigrationInfo::getVersion)
                .map(Object::toString);
    }

    @ParameterizedTest
    @MethodSource("everyVersion")
    void aLedgerOfEveryOlderVersionOpensWithAllItsRecords(String version) throws Exception {
        String url = "jdbc:sqlite:" + root.resolve("ledger.db");
        flyway(url, version).migrate();
        Jdbi.create(url).useTransaction(handle -> {
            FormatOne old = new FormatOne(handle);
            old.save(Things.BOARD, new Board("B01", "Fig"));
            old.save(Things.PRINT, new Print("P1", List.of("B01")));
        });

        try (Opened opened = new Opened(root)) {
            assertThat(opened.check()).isEmpty();
            assertThat(opened.ledger.all(Things.BOARD))
                    .extracting(Saved::record)
                    .containsExactly(new Board("B01", "Fig"));
            assertThat(opened.ledger.referencedBy(Things.BOARD.key("B01"))).containsExactly(Things.PRINT.key("P1"));
            assertThat(opened.board("B02", "Heron").sequence()).isEqualTo(3);
            assertThat(opened.ledger.after(0, 9)).extracting(Revision::format).containsExactly(1, 1, 2);
            assertThat(opened.check()).isEmpty();
        }
        try (var connection = DriverManager.getConnection(url);
                var row = connection.createStatement().executeQuery("SELECT count(*) FROM board_pairs")) {
            assertThat(row.getInt(1)).isEqualTo(2);
        }
    }

    @Test
    void theLedgerOfAnOlderProgramIsCopiedAsideFirstAndNotAgain() throws Exception {
        String url = "jdbc:sqlite:" + root.resolve("ledger.db");
        flyway(url, "4").migrate();
        Jdbi.create(url).useTransaction(handle -> new FormatOne(handle).save(Things.BOARD, new Board("B01", "Fig")));
        new Opened(root).close();
        new Opened(root).close();
        Path copy = root.resolve("older-ledgers/ledger-2024-03-05-schema-4.db");
        try (Stream<Path> copies = Files.list(copy.getParent())) {
            assertThat(copies).containsExactly(copy);
        }
        assertThat(flyway("jdbc:sqlite:" + copy, "latest").info().current().getVersion())
                .hasToString("4");
        assertThat(flyway(url, "latest").info().pending()).isEmpty();
        assertThat(flyway(url, "latest").info().current().getVersion())
                .as("the number that stands in OlderLedgers")
                .hasToString(Integer.toString(OlderLedgers.SCHEMA));
        Path fresh = root.resolve("fresh");
        new Opened(fresh).close();
        assertThat(fresh.resolve("older-ledgers"))
                .as("a ledger of this program, whose number stands in OlderLedgers")
                .doesNotExist();
        new Opened(fresh).close();
        assertThat(fresh.resolve("older-ledgers")).doesNotExist();
    }

    private void isRefusedAndLeftAsItIs(String why) throws Exception {
        Path file = root.resolve("ledger.db");
        byte[] before = Files.readAllBytes(file);

        assertThatThrownBy(() -> new Opened(root))
                .isInstanceOf(ArchiveProblem.class)
                .hasMessageStartingWith("The ledger " + file.toAbsolutePath() + " cannot be opened: ")
                .hasMessageContaining(why)
                .hasMessageContaining("The file was left as it is");

        assertThat(Files.readAllBytes(file)).isEqualTo(before);
        // The folder was let go of, so that it can be tried again.
        ArchiveFolder.hold(root).close();
    }

    @Test
    void aFileThatIsNoDatabaseIsRefusedAndLeftAsItIs() throws Exception {
        Files.writeString(root.resolve("ledger.db"), "Dear diary, ".repeat(500), StandardCharsets.UTF_8);

        isRefusedAndLeftAsItIs("not a database");
    }

    @Test
    void anotherProgramsDatabaseIsRefusedAndLeftAsItIs() throws Exception {
        Things.byHand(root, "CREATE TABLE recipes (name TEXT)", "INSERT INTO recipes VALUES ('soup')");

        isRefusedAndLeftAsItIs("its tables are not those of a ledger");
    }

    @Test
    void aLedgerOfANewerProgramIsRefusedAndLeftAsItIs() throws Exception {
        try (Opened opened = new Opened(root)) {
            opened.board("B01", "Fig");
        }
        Things.byHand(root, """
                INSERT INTO flyway_schema_history
                    (installed_rank, version, description, type, script, checksum, installed_by, execution_time, success)
                VALUES (99, '99', 'of a later year', 'SQL', 'V99__of_a_later_year.sql', 1, '', 1, 1)
                """);

        isRefusedAndLeftAsItIs("its schema is number 99, and this program knows those up to 11");
    }

    @Test
    void aLedgerCutShortIsRefusedOrFoundDamagedAndNeverTakenForWhole() throws Exception {
        try (Opened opened = new Opened(root)) {
            for (int n = 1; n <= 60; n++) {
                opened.board("B" + n, "Fig ".repeat(100));
            }
        }
        Path file = root.resolve("ledger.db");
        byte[] whole = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(whole, whole.length / 2));

        try (Opened opened = new Opened(root)) {
            assertThat(opened.check()).isNotEmpty();
        } catch (ArchiveProblem refused) {
            assertThat(refused).hasMessageContaining("cannot be opened");
        }
    }

    @Test
    void anEmptyFileIsANewLedger() throws Exception {
        Files.createFile(root.resolve("ledger.db"));

        try (Opened opened = new Opened(root)) {
            assertThat(opened.ledger.lastSequence()).isZero();
            assertThat(opened.ledger.lastHash()).isEqualTo(Revision.NONE);
        }
    }
}
