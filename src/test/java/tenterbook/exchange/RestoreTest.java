package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;

class RestoreTest {
    @TempDir
    Path around;

    private BadBag bag;
    private Bag packed;

    @BeforeEach
    void aBag() throws IOException {
        packed = Demo.bag(around);
        bag = new BadBag(packed.folder());
    }

    private Path place() {
        return around.resolve("again");
    }

    private Restored restore() {
        return new Restore(Demo.CLOCK).restore(bag.folder(), place(), Progress.UNWATCHED);
    }

    private void refused(String... told) throws IOException {
        List<String> before = Demo.tree(around);
        assertThatThrownBy(this::restore)
                .isInstanceOf(BagRefused.class)
                .satisfies(e -> assertThat(e.getMessage()).contains(told).contains("Nothing was changed"));
        assertThat(Demo.tree(around)).isEqualTo(before);
    }

    @Test
    void whatComesBackIsWhatWasPacked() throws IOException {
        Restored restored = restore();

        assertThat(restored.lastHash()).isEqualTo(packed.lastHash());
        assertThat(restored.photos()).isEqualTo(3);
        assertThat(restored.notes()).isEmpty();
        assertThat(Demo.tree(place()).stream().filter(path -> !path.startsWith("photos/")))
                .containsExactly("", "ledger.db", "photos");
        try (Archive before = Archive.open(around.resolve("studio"), Demo.CLOCK);
                Archive after = Archive.open(place(), Demo.CLOCK)) {
            assertThat(after.ledger().after(0, 100)).isEqualTo(before.ledger().after(0, 100));
            for (Kind<?> kind : Kinds.ALL) {
                assertThat(after.ledger().all(kind)).isEqualTo(before.ledger().all(kind));
            }
            assertThat(ArchiveCheck.run(after, Progress.UNWATCHED)).isEmpty();
            after.ledger().write("Inês Valderim", act -> act.create(Kinds.BOARD_PAIR, Demo.board("B11", "next")));
            assertThat(ArchiveCheck.run(after, Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void anEmptyFolderIsFilledAndAFullOneIsLeftAlone() throws IOException {
        Files.createDirectory(place());
        Files.writeString(place().resolve("letter.txt"), "dear");
        refused("is not empty");

        Files.delete(place().resolve("letter.txt"));
        assertThat(restore().lastSequence()).isEqualTo(11);
    }

    @Test
    void aPlaceThatIsAFileOrInNoFolderOrInTheBagIsRefused() throws IOException {
        Files.writeString(place(), "x");
        refused("is no folder");
        Restore restore = new Restore(Demo.CLOCK);
        assertThatThrownBy(() -> restore.restore(bag.folder(), around.resolve("no/again"), Progress.UNWATCHED))
                .isInstanceOf(BagRefused.class)
                .hasMessageContaining("Make that folder first");
        assertThatThrownBy(() -> restore.restore(bag.folder(), bag.folder().resolve("again"), Progress.UNWATCHED))
                .isInstanceOf(BagRefused.class)
                .hasMessageContaining("lies inside the bag");
    }

    private interface Harm {
        void doTo(BadBag bag) throws Exception;
    }

    private static Arguments harm(String name, Harm harm, String... told) {
        return Arguments.of(name, harm, told);
    }

    /** Harms done to a bag of ours; each of the standard's rules by itself is in BagCheckTest. */
    static Stream<Arguments> harms() {
        String outside = "0".repeat(64) + "  data/photos/../../../outside.jpg\n";
        return Stream.of(
                harm(
                        "a bit of the ledger was flipped",
                        bag -> bag.flipBit("data/ledger.db"),
                        "data/ledger.db: is not what"),
                harm(
                        "the ledger is missing",
                        bag -> bag.delete("data/ledger.db"),
                        "no such file",
                        "no archive of ours"),
                harm("a stranger's bag", bag -> remade(bag.delete("data/ledger.db")), "no archive of ours"),
                harm("an added file", bag -> bag.write("data/photos/new.txt", "x"), "is in no manifest"),
                harm(
                        "a way out",
                        bag -> bag.append("manifest-sha512.txt", outside),
                        "climbs out",
                        "manifest-sha512.txt: is not"),
                harm(
                        "a link",
                        bag -> Files.createSymbolicLink(bag.folder().resolve("data/x"), Path.of("/etc")),
                        "is a link"),
                harm("no declaration", bag -> bag.delete("bagit.txt"), "bagit.txt: is missing"),
                harm(
                        "something to fetch",
                        bag -> bag.write("fetch.txt", "https://example.org/a - data/a\n"),
                        "https://example.org/a"),
                harm(
                        "a wrong oxum",
                        bag -> bag.replace("bag-info.txt", "Payload-Oxum: ", "Payload-Oxum: 9"),
                        "Payload-Oxum"),
                harm(
                        "the ledger was copied in use",
                        bag -> remade(bag.write("data/ledger.db-wal", "x")),
                        "copied while in use"),
                harm("the ledger is text", bag -> remade(bag.write("data/ledger.db", "dear")), "is no SQLite file"),
                harm(
                        "the ledger is cut short",
                        bag -> {
                            Path ledger = bag.folder().resolve("data/ledger.db");
                            Files.write(ledger, java.util.Arrays.copyOf(Files.readAllBytes(ledger), 8192));
                            remade(bag);
                        },
                        "ledger.db"),
                harm(
                        "a lesser export",
                        bag -> bag.replace("bag-info.txt", "Contents: everything", "Contents: public")
                                .tagManifests(),
                        "the bag holds “public”"),
                harm(
                        "an old record was altered",
                        bag -> {
                            sql(
                                    bag,
                                    "DROP TRIGGER revisions_are_never_changed",
                                    "UPDATE revisions SET record = replace(record, 'Fig and wasp', 'Fig and bee')");
                            remade(bag);
                        },
                        "its public part does not give its digest",
                        "data/ledger.jsonl: says something else"),
                harm(
                        "a trigger was added",
                        bag -> {
                            sql(bag, "CREATE TRIGGER quiet AFTER INSERT ON revisions BEGIN DELETE FROM drafts; END");
                            remade(bag);
                        },
                        "has a trigger quiet that is not ours"),
                harm(
                        "what keeps revisions from being changed was taken out",
                        bag -> {
                            sql(bag, "DROP TRIGGER revisions_are_never_changed", "DROP VIEW pieces");
                            remade(bag);
                        },
                        "lacks the trigger revisions_are_never_changed",
                        "lacks the view pieces"),
                harm(
                        "a revision was taken out",
                        bag -> {
                            sql(
                                    bag,
                                    "DROP TRIGGER revisions_are_never_deleted",
                                    "DELETE FROM current WHERE id = 'vermia'",
                                    "DELETE FROM revisions WHERE sequence = 2");
                            remade(bag);
                        },
                        "one or more are missing"),
                harm(
                        "a reference was taken out",
                        bag -> {
                            sql(bag, "DELETE FROM reference WHERE to_kind = 'party'");
                            remade(bag);
                        },
                        "names the party vermia, but the table ‘reference’ does not say so"),
                harm(
                        "a whole other ledger was put in",
                        bag -> {
                            Path other = bag.folder().resolveSibling("other");
                            try (Archive archive = Archive.open(other, Demo.CLOCK)) {
                                Files.delete(bag.folder().resolve("data/ledger.db"));
                                archive.ledger().copyToKeep(bag.folder().resolve("data/ledger.db"));
                            }
                            remade(bag);
                        },
                        "but bag-info.txt says",
                        "data/ledger.jsonl: says something else than data/ledger.db from revision 1"),
                harm(
                        "a photograph was exchanged",
                        bag -> {
                            try (Stream<Path> files = Files.walk(bag.folder().resolve("data/photos"))) {
                                Files.writeString(
                                        files.filter(Files::isRegularFile)
                                                .findFirst()
                                                .orElseThrow(),
                                        "x");
                            }
                            remade(bag);
                        },
                        "is not the file that was taken in"));
    }

    /** Makes the manifests agree again, as someone would who hides what was done. */
    private static void remade(BadBag bag) throws IOException {
        String info = Files.readString(bag.folder().resolve("bag-info.txt"));
        bag.write("bag-info.txt", info.replaceAll("Payload-Oxum: .*\\R", "")).manifests();
    }

    private static void sql(BadBag bag, String... statements) throws Exception {
        try (var connection = DriverManager.getConnection(
                        "jdbc:sqlite:" + bag.folder().resolve("data/ledger.db"));
                var statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("harms")
    void aHarmedBagIsRefusedAndLeavesNothing(String name, Harm harm, String[] told) throws Exception {
        harm.doTo(bag);
        refused(told);
    }

    @Test
    void aBagOfAnotherStudioIsValidAndNoArchiveOfOurs() throws IOException {
        bag = BadBag.good(around.resolve("stranger"));
        refused("data/ledger.db: is missing; without it this may be a bag, but it is no archive of ours");
    }

    @Test
    void aBagThatIsMadeAgainWithoutHarmIsRestored() throws IOException {
        remade(bag);
        assertThat(restore().lastHash()).isEqualTo(packed.lastHash());
    }

    @Test
    void aBagWhoseTextWasTakenOutIsRestoredAndThatIsNoted() throws IOException {
        bag.delete("data/ledger.jsonl");
        remade(bag);
        assertThat(restore().notes())
                .singleElement()
                .satisfies(note -> assertThat(note.toString())
                        .startsWith("data/ledger.jsonl: is missing, and every bag of this archive has it")
                        .contains("Nothing is lost"));
    }

    @Test
    void anOrphanComesBackAndIsNoted() throws IOException {
        try (Archive archive = Archive.open(around.resolve("studio"), Demo.CLOCK)) {
            Demo.photo(archive, 99, 10);
            Path second = around.resolve("second");
            new Pack(Demo.CLOCK).pack(archive, second, Progress.UNWATCHED);
            bag = new BadBag(second);
        }
        assertThat(restore().notes())
                .singleElement()
                .satisfies(note -> assertThat(note.what()).startsWith("an orphan"));
    }

    @Test
    void restoringStopsWhenAskedAtAnyPointAndLeavesNothing() throws IOException {
        List<String> before = Demo.tree(around);
        int stops = 0;
        for (int at = 1; at < 800 && !Files.exists(place()); at += 5) {
            try {
                new Restore(Demo.CLOCK).restore(bag.folder(), place(), new Stopping(at));
            } catch (Progress.Cancelled e) {
                stops++;
                assertThat(Demo.tree(around)).isEqualTo(before);
            }
        }
        assertThat(stops).isGreaterThan(5);
        assertThat(place()).isDirectory();
    }
}
