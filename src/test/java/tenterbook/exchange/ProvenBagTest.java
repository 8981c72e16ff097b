package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.ledger.file.Progress;

/** A bag gets its name only after it was read back and found to be one that comes back as an archive. */
class ProvenBagTest {
    @TempDir
    Path around;

    private interface Harm {
        void doTo(BadBag bag) throws Exception;
    }

    /** Does harm to the bag once it is written and before it is read back, as a failing disk does. */
    private Progress harming(Harm harm) {
        return new Progress() {
            private boolean done;

            @Override
            public void at(long bytes, long total, String what) {
                if (!done && what.equals("listing the bag")) {
                    done = true;
                    try (Stream<Path> inside = Files.list(around)) {
                        Path unfinished = inside.filter(
                                        path -> path.getFileName().toString().startsWith(".bag.unfinished-"))
                                .findFirst()
                                .orElseThrow();
                        harm.doTo(new BadBag(unfinished.resolve("whole")));
                    } catch (Exception e) {
                        throw new AssertionError(e);
                    }
                }
            }

            @Override
            public boolean cancelled() {
                return false;
            }
        };
    }

    private static String aPhotograph(BadBag bag) throws IOException {
        try (Stream<Path> files = Files.walk(bag.folder().resolve("data/photos"))) {
            Path photo = files.filter(Files::isRegularFile).findFirst().orElseThrow();
            return bag.folder().relativize(photo).toString();
        }
    }

    private static void sql(Path ledger, String... statements) throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + ledger);
                var statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    /** The same with manifests that agree, so that only what the ledger itself says can show it. */
    private static Harm agreeing(Harm harm) {
        return bag -> {
            harm.doTo(bag);
            String info = Files.readString(bag.folder().resolve("bag-info.txt"));
            bag.write("bag-info.txt", info.replaceAll("Payload-Oxum: .*\\R", ""))
                    .manifests();
        };
    }

    static Stream<Map.Entry<String, Harm>> harms() {
        return Stream.of(
                Map.entry("is not what it was when the bag was made", bag -> bag.flipBit(aPhotograph(bag))),
                Map.entry("is not what it was when the bag was made", bag -> bag.flipBit("data/ledger.db")),
                Map.entry("no such file", bag -> bag.delete(aPhotograph(bag))),
                Map.entry("its original is missing", agreeing(bag -> bag.delete(aPhotograph(bag)))),
                Map.entry("is no SQLite file", agreeing(bag -> bag.write("data/ledger.db", "dear"))),
                Map.entry(
                        "has a view mine that is not ours",
                        agreeing(bag ->
                                sql(bag.folder().resolve("data/ledger.db"), "CREATE VIEW mine AS SELECT 1 AS one"))),
                Map.entry(
                        "its contents do not give its hash",
                        agreeing(bag -> sql(
                                bag.folder().resolve("data/ledger.db"),
                                "DROP TRIGGER revisions_are_never_changed",
                                "UPDATE revisions SET written_at = '2001-01-01T00:00:00Z' WHERE sequence = 1"))),
                Map.entry(
                        "data/ledger.jsonl: says something else",
                        agreeing(bag -> bag.append("data/ledger.jsonl", "{}\n"))));
    }

    @ParameterizedTest
    @MethodSource("harms")
    void aBagThatWouldNotComeBackIsNeverGivenItsName(Map.Entry<String, Harm> harm) throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            List<String> before = Demo.tree(around);
            assertThatThrownBy(
                            () -> new Pack(Demo.CLOCK).pack(archive, around.resolve("bag"), harming(harm.getValue())))
                    .isInstanceOf(PackRefused.class)
                    .hasMessageContaining(harm.getKey())
                    .hasMessageContaining("No bag was packed");
            assertThat(Demo.tree(around)).isEqualTo(before);
        }
    }

    @Test
    void readingABagBackChangesNothingInIt() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            Bag bag = new Pack(Demo.CLOCK).pack(archive, around.resolve("bag"), Progress.UNWATCHED);
            assertThat(BagCheck.run(bag.folder(), Progress.UNWATCHED).findings())
                    .isEmpty();
            assertThat(bag.folder().resolve("data/ledger.db-wal")).doesNotExist();
            assertThat(Demo.tree(around)).noneMatch(name -> name.contains("unfinished"));
        }
    }

    @Test
    void aLedgerThatIsNotBuiltAsOursIsPackedOnlyWithThatNoted() throws Exception {
        Demo.open(around.resolve("studio")).close();
        sql(around.resolve("studio/ledger.db"), "CREATE VIEW mine AS SELECT 1 AS one", "DROP VIEW pieces");
        try (Archive archive = Archive.open(around.resolve("studio"), Demo.CLOCK)) {
            Pack pack = new Pack(Demo.CLOCK);
            assertThatThrownBy(() -> pack.pack(archive, around.resolve("bag"), Progress.UNWATCHED))
                    .isInstanceOf(PackRefused.class)
                    .hasMessageContaining("has a view mine that is not ours")
                    .hasMessageContaining("lacks the view pieces");
            assertThat(around.resolve("bag")).doesNotExist();

            Bag bag = pack.pack(archive, around.resolve("bag"), DamageAdvice.NOTED, Progress.UNWATCHED);
            assertThat(bag.damage()).hasSize(2);
        }
    }
}
