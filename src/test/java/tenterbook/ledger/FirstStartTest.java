package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.ledger.Things.Opened;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;

/** What is begun anew, what is gone on with after a killed first start, and what is never replaced by an empty ledger. */
class FirstStartTest {
    @TempDir
    Path around;

    private Path root;

    /** What a first start may leave when it is killed, in the order in which it comes about. */
    private enum Half {
        NO_FOLDER {
            @Override
            void make(Path root) {}
        },
        EMPTY_FOLDER {
            @Override
            void make(Path root) throws Exception {
                Files.createDirectory(root);
            }
        },
        THE_LOCK_ALONE {
            @Override
            void make(Path root) {
                ArchiveFolder.hold(root).close();
            }
        },
        AN_EMPTY_FILE {
            @Override
            void make(Path root) throws Exception {
                THE_LOCK_ALONE.make(root);
                Files.createFile(root.resolve("ledger.db"));
            }
        },
        A_JOURNAL_BESIDE_AN_EMPTY_FILE {
            @Override
            void make(Path root) throws Exception {
                interrupted(root, "PRAGMA journal_mode = DELETE", "BEGIN", "PRAGMA user_version = 1");
                assertThat(root.resolve("ledger.db-journal")).isNotEmptyFile();
            }
        },
        A_JOURNAL_BESIDE_ONE_PAGE {
            @Override
            void make(Path root) throws Exception {
                A_JOURNAL_BESIDE_AN_EMPTY_FILE.make(root);
                Path other = root.resolveSibling("other.db");
                try (var connection = DriverManager.getConnection("jdbc:sqlite:" + other);
                        var statement = connection.createStatement()) {
                    statement.execute("PRAGMA user_version = 1");
                }
                Files.write(root.resolve("ledger.db"), Files.readAllBytes(other));
            }
        },
        NO_TABLES {
            @Override
            void make(Path root) throws Exception {
                interrupted(root, "PRAGMA journal_mode = WAL");
                assertThat(root.resolve("ledger.db")).isNotEmptyFile();
            }
        },
        A_LOG_OF_WHAT_WAS_NOT_COMMITTED {
            @Override
            void make(Path root) throws Exception {
                interrupted(
                        root,
                        "PRAGMA journal_mode = WAL",
                        "PRAGMA cache_size = 1",
                        "BEGIN",
                        "CREATE TABLE flyway_schema_history (a TEXT)",
                        "WITH RECURSIVE n (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM n WHERE n < 2000)"
                                + " INSERT INTO flyway_schema_history SELECT hex(zeroblob(500)) FROM n");
                assertThat(root.resolve("ledger.db-wal")).isNotEmptyFile();
            }
        },
        HISTORY_WITHOUT_STEPS {
            @Override
            void make(Path root) throws Exception {
                THE_FIRST_STEP_ALONE.make(root);
                Things.byHand(
                        root,
                        "DROP TABLE drafts",
                        "DROP TABLE reference",
                        "DROP TABLE current",
                        "DROP TABLE revisions",
                        "DELETE FROM flyway_schema_history");
            }
        },
        THE_FIRST_STEP_ALONE {
            @Override
            void make(Path root) throws Exception {
                NO_TABLES.make(root);
                Flyway.configure()
                        .dataSource("jdbc:sqlite:" + root.resolve("ledger.db"), null, null)
                        .locations("classpath:db/migration")
                        .loggers("slf4j")
                        .target("1")
                        .load()
                        .migrate();
            }
        };

        abstract void make(Path root) throws Exception;

        /** Copies the files of a connection that never ends, as a killed process leaves them. */
        private static void interrupted(Path root, String... statements) throws Exception {
            Path working = Files.createDirectory(root.resolveSibling("working"));
            THE_LOCK_ALONE.make(root);
            try (var connection = DriverManager.getConnection("jdbc:sqlite:" + working.resolve("ledger.db"));
                    var statement = connection.createStatement()) {
                for (String sql : statements) {
                    statement.execute(sql);
                }
                statement.execute("SELECT 1");
                try (Stream<Path> files = Files.list(working)) {
                    for (Path file : files.toList()) {
                        Files.copy(file, root.resolve(file.getFileName()));
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Half.class)
    void aFirstStartThatWasKilledIsGoneOnWith(Half half) throws Exception {
        root = around.resolve("studio");
        half.make(root);
        try (Opened opened = new Opened(root)) {
            opened.board("B01", "Fig");
            assertThat(opened.check()).isEmpty();
        }
        try (Opened opened = new Opened(root)) {
            assertThat(opened.ledger.lastSequence()).isEqualTo(1);
        }
    }

    private interface Loss {
        void doTo(Path root) throws Exception;
    }

    static Stream<Map.Entry<String, Loss>> losses() {
        Map<String, Loss> losses = new LinkedHashMap<>();
        losses.put("expected a file ledger.db there and found none", FirstStartTest::delete);
        losses.put("its file ledger.db is empty", FirstStartTest::empty);
        losses.put("its file ledger.db holds no tables", root -> {
            delete(root);
            Half.NO_TABLES.make(root.resolveSibling("blank"));
            Files.copy(root.resolveSibling("blank").resolve("ledger.db"), root.resolve("ledger.db"));
        });
        return losses.entrySet().stream();
    }

    private static void delete(Path root) throws IOException {
        Files.delete(root.resolve("ledger.db"));
    }

    private static void empty(Path root) throws IOException {
        Files.write(root.resolve("ledger.db"), new byte[0]);
    }

    private void fill(String beside) throws IOException {
        root = around.resolve("studio");
        try (Opened opened = new Opened(root)) {
            opened.board("B01", "Fig");
        }
        Path file = root.resolve(beside);
        Files.createDirectories(file.getParent());
        Files.writeString(file, "kept", StandardCharsets.UTF_8);
    }

    private void isRefused(String found, String beside) throws IOException {
        var before = tree();
        assertThatThrownBy(() -> new Opened(root))
                .isInstanceOf(ArchiveProblem.class)
                .hasMessageContaining(found)
                .hasMessageContaining(beside)
                .hasMessageContaining("Nothing was changed")
                .hasMessageContaining("put it back")
                .hasMessageContaining("restore the newest bag into another folder");
        assertThat(tree()).isEqualTo(before);
        ArchiveFolder.hold(root).close();
    }

    /** SQLite makes an empty log and its index beside a file that is only read. */
    private static boolean kept(Path file) {
        String name = file.getFileName().toString();
        return Files.isRegularFile(file)
                && !name.endsWith("-shm")
                && !(name.endsWith("-wal") && file.toFile().length() == 0);
    }

    private Map<String, String> tree() throws IOException {
        Map<String, String> tree = new LinkedHashMap<>();
        try (Stream<Path> files = Files.walk(root)) {
            for (Path file : files.filter(FirstStartTest::kept).sorted().toList()) {
                tree.put(file.toString(), new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
            }
        }
        return tree;
    }

    @ParameterizedTest
    @MethodSource("losses")
    void aLostLedgerIsNeverReplacedByAnEmptyOne(Map.Entry<String, Loss> loss) throws Exception {
        fill("photos/ab/abcd.jpg");
        loss.getValue().doTo(root);
        isRefused(loss.getKey(), "photos");
    }

    @ParameterizedTest
    @ValueSource(strings = {"index/segments_2", "previews/ab/abcd.jpg", "photos/ab/abcd.jpg"})
    void anythingThatAnArchiveLeavesShowsThatItsLedgerIsGone(String beside) throws Exception {
        fill(beside);
        delete(root);
        isRefused("found none", beside.substring(0, beside.indexOf('/')));
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aWriteAheadLogWithoutItsLedgerIsKept(boolean leaveEmpty) throws Exception {
        root = around.resolve("studio");
        byte[] log;
        try (Opened opened = new Opened(root)) {
            opened.board("B01", "Fig");
            log = Files.readAllBytes(root.resolve("ledger.db-wal"));
        }
        assertThat(log).isNotEmpty();
        Files.write(root.resolve("ledger.db-wal"), log);
        if (leaveEmpty) {
            empty(root);
        } else {
            delete(root);
        }
        isRefused(leaveEmpty ? "is empty" : "found none", "ledger.db-wal");
    }

    @Test
    void theFoldersOfAnArchiveWithNothingInThemAreNoLoss() throws Exception {
        root = around.resolve("studio");
        for (String folder : new String[] {"photos/arriving", "previews", "index"}) {
            Files.createDirectories(root.resolve(folder));
        }
        try (Opened opened = new Opened(root)) {
            assertThat(opened.ledger.lastSequence()).isZero();
        }
    }

    /** A ledger copied out of a bag is no write-ahead log yet; a kill while it becomes one leaves its journal. */
    @Test
    void aLedgerWithAJournalBesideItIsOpenedWithAllItHolds() throws Exception {
        Path kept = around.resolve("kept");
        try (Opened opened = new Opened(kept)) {
            opened.board("B01", "Fig");
            opened.ledger.copyToKeep(around.resolve("kept.db"));
        }
        root = around.resolve("studio");
        Path working = Files.createDirectories(root.resolveSibling("working")).resolve("ledger.db");
        Files.copy(around.resolve("kept.db"), working);
        Files.createDirectories(root);
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + working);
                var statement = connection.createStatement()) {
            statement.execute("PRAGMA cache_size = 1");
            statement.execute("BEGIN");
            statement.execute("CREATE TABLE noise (a TEXT)");
            statement.execute("WITH RECURSIVE n (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM n WHERE n < 2000)"
                    + " INSERT INTO noise SELECT hex(zeroblob(500)) FROM n");
            Files.copy(working, root.resolve("ledger.db"));
            Files.copy(working.resolveSibling("ledger.db-journal"), root.resolve("ledger.db-journal"));
        }
        try (Opened opened = new Opened(root)) {
            assertThat(opened.ledger.lastSequence()).isEqualTo(1);
            assertThat(opened.check()).isEmpty();
        }
    }
}
