package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.KilledWork.Kind;
import tenterbook.exchange.backup.Backup;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.imaging.Originals;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.search.PieceIndex;
import tenterbook.web.piece.TagFacet;

/**
 * Kills work of every kind at random moments, on archives that go on being used, and looks after each kill whether everything
 * acknowledged is there, nothing is half there, and the check finds nothing but files that no record names. Killing a process is
 * not a power cut. Not part of the build: {@code KillHarness KILLS MINUTES [SEED]} ends at whichever comes first.
 */
public final class KillHarness {
    private static final int KILLS_OF_AN_ARCHIVE = 27;
    private static final int PHOTOS = 6;
    private static final int BYTES = 400_000;

    private final Random random;
    private final Path around;
    private final Map<Kind, Integer> kills = new EnumMap<>(Kind.class);
    private final Map<Kind, Integer> acknowledged = new EnumMap<>(Kind.class);
    private final Map<Kind, Integer> named = new EnumMap<>(Kind.class);
    /** How long work that ends takes unhindered, in milliseconds from its beginning. */
    private final Map<Kind, Long> takes = new EnumMap<>(Kind.class);

    private Path studio;
    private Path bag;
    private Path disk;
    private long revisions;
    private int killsHere;
    private final List<String> promises = new ArrayList<>();

    private KillHarness(Path around, long seed) {
        this.around = around;
        this.random = new Random(seed);
    }

    public static void main(String[] arguments) throws Exception {
        int most = Integer.parseInt(arguments[0]);
        long until = System.nanoTime()
                + Duration.ofMinutes(Long.parseLong(arguments[1])).toNanos();
        long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : new Random().nextLong();
        System.out.println("seed " + seed);
        Path around = Files.createTempDirectory("killed-work");
        KillHarness harness = new KillHarness(around, seed);
        try {
            for (int n = 0; n < most && System.nanoTime() < until; n++) {
                harness.kill(Kind.values()[n % Kind.values().length]);
            }
        } finally {
            harness.print();
        }
        delete(around);
    }

    private void print() {
        System.out.printf("%-10s %6s %13s %14s%n", "work", "kills", "acknowledged", "unnamed files");
        for (Kind kind : Kind.values()) {
            System.out.printf(
                    "%-10s %6d %13d %14d%n",
                    kind.name().toLowerCase(java.util.Locale.ROOT),
                    kills.getOrDefault(kind, 0),
                    acknowledged.getOrDefault(kind, 0),
                    named.getOrDefault(kind, 0));
        }
        System.out.println(
                "all " + kills.values().stream().mapToInt(count -> count).sum());
    }

    /** A new archive, its bag, a folder for its backups, and enough pieces to sell. */
    private void begin() throws IOException {
        Path here = Files.createDirectory(
                around.resolve("a" + kills.values().stream().mapToInt(n -> n).sum()));
        studio = here.resolve("studio");
        bag = here.resolve("bag");
        disk = Files.createDirectory(here.resolve("disk"));
        try (Archive archive = Demo.open(studio, PHOTOS, BYTES)) {
            new Pack(Demo.CLOCK).pack(archive, bag, Progress.UNWATCHED);
            revisions = archive.ledger().lastSequence();
            KilledWork.bringIn(archive, "FIRST", 100, here);
        }
        killsHere = 0;
        promises.clear();
    }

    private void kill(Kind kind) throws Exception {
        if (studio == null || killsHere == KILLS_OF_AN_ARCHIVE) {
            begin();
        }
        Path target = target(kind);
        if (!kind.endless() && !takes.containsKey(kind)) {
            takes.put(kind, run(kind, target, Long.MAX_VALUE));
            whole(kind, target);
            delete(target);
        }
        long most = kind.endless() ? 1500 : takes.get(kind) * 5 / 4;
        run(kind, target, random.nextLong(0, most + 1));
        killsHere++;
        check(kind, target);
        if (!kind.endless() || kind == Kind.MIGRATION) {
            delete(target);
        }
    }

    private Path target(Kind kind) throws IOException {
        if (kind == Kind.BACKUP) {
            return disk;
        }
        Path target = studio.resolveSibling("target-" + kind);
        if (kind == Kind.MIGRATION) {
            Files.createDirectory(target);
            Files.copy(
                    Path.of("src/test/resources/tenterbook/exchange/format-1-bag/data/ledger.db"),
                    target.resolve("ledger.db"));
            copy(Path.of("sample-archive/data/photos"), target.resolve("photos"));
        }
        return target;
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path each : files.toList()) {
                Path there = to.resolve(from.relativize(each).toString());
                if (Files.isDirectory(each)) {
                    Files.createDirectory(there);
                } else {
                    Files.copy(each, there);
                }
            }
        }
    }

    /**
     * Runs a child and kills it so long after it began.
     *
     * @return how long it ran, in milliseconds
     */
    private long run(Kind kind, Path target, long millis) throws Exception {
        Path said = around.resolve("acknowledged");
        Files.deleteIfExists(said);
        Path from = kind == Kind.RESTORE ? bag : kind == Kind.MIGRATION ? target : studio;
        Process child = KilledWork.start(kind, from, target, said, 0);
        // Most are killed while they work, some while they open the archive.
        int lines = kind.endless() && random.nextInt(4) > 0 ? 2 : 1;
        while (child.isAlive()
                && (!Files.exists(said) || Files.readAllLines(said).size() < lines)) {
            Thread.sleep(2);
        }
        long began = System.nanoTime();
        boolean ended = child.waitFor(millis, TimeUnit.MILLISECONDS);
        long ran = (System.nanoTime() - began) / 1_000_000;
        if (!ended) {
            child.destroyForcibly().waitFor();
            kills.merge(kind, 1, Integer::sum);
        } else if (child.exitValue() != 0) {
            throw new IllegalStateException(kind + " failed: " + Files.readString(around.resolve("child.log")));
        }
        List<String> now = Files.exists(said) ? Files.readAllLines(said) : List.of();
        acknowledged.merge(kind, Math.max(0, now.size() - 1), Integer::sum);
        (kind == Kind.MIGRATION ? migrated : promises).addAll(now);
        return ran;
    }

    private final List<String> migrated = new ArrayList<>();

    private void check(Kind kind, Path target) throws IOException {
        if (kind == Kind.MIGRATION) {
            look(kind, target, migrated);
            migrated.clear();
            return;
        }
        look(kind, studio, promises);
        if (kind == Kind.BACKUP) {
            boolean any = promises.contains("backup");
            if (any) {
                assertThat(BagVerification.kept(BackupFolder.bagIn(disk), Clock.systemUTC(), Progress.UNWATCHED))
                        .as("the newest backup")
                        .isEmpty();
            }
            try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
                assertThat(new Backup(disk, Clock.systemUTC())
                                .make(archive, Progress.UNWATCHED)
                                .findings())
                        .as("the next backup")
                        .isEmpty();
            }
        } else if (!kind.endless()) {
            boolean done = promises.remove("whole");
            assertThat(!done || Files.exists(target))
                    .as("acknowledged %s", kind)
                    .isTrue();
            if (Files.exists(target)) {
                whole(kind, target);
            }
        }
    }

    /** What has got its name is whole. */
    private void whole(Kind kind, Path target) throws IOException {
        promises.remove("whole");
        if (kind == Kind.PACK) {
            assertThat(BagCheck.run(target, Progress.UNWATCHED).findings()).isEmpty();
            return;
        }
        try (Archive archive = Archive.open(target, Clock.systemUTC())) {
            assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
            assertThat(archive.ledger().lastSequence()).isGreaterThanOrEqualTo(revisions);
        }
    }

    private void look(Kind kind, Path folder, List<String> promised) throws IOException {
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            for (String line : promised) {
                promised(archive, line.split(" "));
            }
            List<Finding> findings = ArchiveCheck.run(archive, Progress.UNWATCHED);
            assertThat(findings)
                    .as("findings after a killed %s", kind)
                    .allMatch(finding -> finding.consequence() == Consequence.UNNAMED);
            named.merge(kind, findings.size(), Integer::sum);
            if (random.nextInt(30) == 0) {
                try (TagTable tags = TagTable.open(archive);
                        PieceIndex index = PieceIndex.open(archive, new TagFacet(tags))) {
                    assertThat(tags.check(Progress.UNWATCHED)).isEmpty();
                    assertThat(index.check(Progress.UNWATCHED)).isEmpty();
                }
            }
        }
    }

    private static void promised(Archive archive, String[] words) throws IOException {
        switch (words[0]) {
            case "board" ->
                assertThat(archive.ledger().history(Kinds.BOARD_PAIR.key(words[1])))
                        .as("acknowledged board %s %s", words[1], words[2])
                        .hasSizeGreaterThanOrEqualTo(words[2].equals("first") ? 1 : 2);
            case "sold" -> {
                assertThat(archive.piece(words[1]).orElseThrow().events())
                        .extracting(Event::kind)
                        .containsExactly(EventKind.SOLD);
                assertThat(archive.partiesCalled("Buyer of " + words[1])).hasSize(1);
            }
            case "photo" -> {
                assertThat(archive.ledger().find(Kinds.PHOTO, words[1])).isPresent();
                assertThat(new Originals(archive.folder()).verify(new Digest(words[1])))
                        .isEqualTo(HashedFiles.Check.GOOD);
            }
            case "import" ->
                assertThat(archive.ledger().idsEverUsed(Kinds.PIECE, words[1] + "-"))
                        .hasSize(KilledWork.ROWS);
            default -> assertThat(words[0]).isIn("ready", "backup", "whole");
        }
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(each);
                }
            }
        }
    }
}
