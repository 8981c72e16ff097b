package tenterbook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.app.Ran.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.RestoredSample;
import tenterbook.ledger.revision.Kind;
import tenterbook.measure.Digest;

/** From whatever is left of the sample archive a new one is made, and nothing of the source changes. */
class RescueTest {
    @TempDir
    Path around;

    private Path studio;
    private Path fresh;

    @BeforeEach
    void restore() {
        studio = around.resolve("studio");
        fresh = around.resolve("fresh");
        RestoredSample.copyTo(studio);
    }

    private Ran rescue(Path from) throws IOException {
        Map<String, Digest> before = Files.isDirectory(from) ? CheckedBagTest.files(from) : Map.of();
        Ran ran = run("rescue", "--from", from, "--archive", fresh);
        assertThat(ran.code()).as(ran.out() + ran.err()).isLessThan(2);
        if (Files.isDirectory(from)) {
            assertThat(CheckedBagTest.files(from)).isEqualTo(before);
        }
        assertThat(fresh.resolve("RESCUED.txt")).exists();
        return ran;
    }

    /** The text of every record in use, by key. */
    private static Map<String, String> records(Path folder) {
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            Map<String, String> records = new TreeMap<>();
            for (Kind<?> kind : Kinds.ALL) {
                add(archive, kind, records);
            }
            return records;
        }
    }

    private static <T> void add(Archive archive, Kind<T> kind, Map<String, String> records) {
        archive.ledger()
                .all(kind)
                .forEach(saved -> records.put(
                        kind.key(kind.id().apply(saved.record())).toString(),
                        kind.codec().toJson(saved.record()).toString()));
    }

    private static List<Path> photos(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder.resolve("photos"))) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }

    @Test
    void aWholeArchiveKeepsItsChain() throws IOException {
        Ran ran = rescue(studio);
        assertThat(ran.code()).as(ran.out()).isZero();
        assertThat(ran.out()).contains("one chain as it was written").contains("Missing: nothing");
        assertThat(records(fresh)).isEqualTo(records(studio));
        assertThat(run("check", "--archive", fresh).code()).isZero();
    }

    @Test
    void thePlainTextOfABagIsEnoughForEveryRecord() throws IOException {
        Path bag = around.resolve("bag");
        assertThat(run("pack", "--archive", studio, "--to", bag).code()).isZero();
        Ran ran = rescue(bag.resolve("data/ledger.jsonl"));
        assertThat(ran.code()).as("the photographs are missing").isEqualTo(1);
        assertThat(ran.out()).contains("Their chain is a new one").contains("Doubtful: nothing");
        assertThat(records(fresh)).isEqualTo(records(studio));
    }

    @Test
    void aBagWithADamagedLedgerGetsItsRecordsFromTheTextAndItsPhotographsBack() throws IOException {
        Path bag = around.resolve("bag");
        assertThat(run("pack", "--archive", studio, "--to", bag).code()).isZero();
        byte[] bytes = Files.readAllBytes(bag.resolve("data/ledger.db"));
        java.util.Arrays.fill(bytes, 4096, bytes.length / 2, (byte) 7);
        Files.write(bag.resolve("data/ledger.db"), bytes);
        rescue(bag);
        assertThat(records(fresh)).isEqualTo(records(studio));
        assertThat(photos(fresh)).hasSameSizeAs(photos(studio));
    }

    @Test
    void aLedgerWithoutPhotographsSaysWhichAreMissing() throws IOException {
        int count = photos(studio).size();
        delete(studio.resolve("photos"));
        Ran ran = rescue(studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.lines())
                .filteredOn(line -> line.contains("its original is missing"))
                .hasSize(count);
        assertThat(ran.out()).contains("one chain as it was written");
    }

    @Test
    void photographsWithoutALedgerWaitInANewArchive() throws IOException {
        Path left = Files.createDirectories(around.resolve("left"));
        List<Path> some = photos(studio).subList(0, 3);
        for (Path photo : some) {
            Files.copy(photo, left.resolve("found" + some.indexOf(photo) + ".jpg"));
        }
        Ran ran = rescue(left);
        assertThat(ran.out()).contains("3 photographs that no record names").contains("no ledger was found");
        try (Archive archive = Archive.open(fresh, Clock.systemUTC())) {
            assertThat(archive.ledger().unreferenced(Kinds.PHOTO, Kinds.PIECE)).hasSize(3);
        }
    }

    @Test
    void aChangedRevisionIsDoubtfulAndAnUnreadableOneIsNamed() throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + studio.resolve("ledger.db"));
                var statement = connection.createStatement()) {
            statement.execute("DROP TRIGGER revisions_are_never_changed");
            statement.execute("UPDATE revisions SET record = '{\"id\":7}' WHERE sequence = (SELECT min(sequence)"
                    + " FROM revisions WHERE kind = 'board-pair')");
            statement.execute("UPDATE revisions SET author = '', written_at = '2024-01-08T09:12:01Z' WHERE sequence"
                    + " = (SELECT max(sequence) FROM revisions WHERE kind = 'clamping')");
        }
        Path photo = photos(studio).get(0);
        byte[] bytes = Files.readAllBytes(photo);
        bytes[bytes.length / 2] ^= 1;
        Files.delete(photo);
        Files.write(photo, bytes);
        Ran ran = rescue(studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.lines())
                .anyMatch(line -> line.contains("so it was left out. Its text: {\"id\":7}"))
                .anyMatch(line -> line.contains("was changed after it was written, or lost a part; the clamping"))
                .anyMatch(line -> line.contains("doubtful/" + photo.getFileName()));
        assertThat(fresh.resolve("doubtful").resolve(photo.getFileName())).exists();
        try (Archive archive = Archive.open(fresh, Clock.systemUTC())) {
            assertThat(archive.ledger().count(Kinds.PIECE)).isPositive();
            assertThat(archive.ledger().check().run(tenterbook.ledger.file.Progress.UNWATCHED))
                    .as("the new chain is whole")
                    .isEmpty();
        }
    }

    @Test
    void whereThereIsNothingNothingIsMade() {
        Path empty = around.resolve("nothing");
        empty.toFile().mkdir();
        Ran ran = run("rescue", "--from", empty, "--archive", fresh);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).contains("holds nothing of an archive");
        assertThat(fresh).doesNotExist();
    }
}
