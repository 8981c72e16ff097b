package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.KilledWork.Kind;
import tenterbook.exchange.backup.Backup;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.exchange.sheet.ImportFolder;
import tenterbook.imaging.Originals;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.scenario.ServedWork;
import tenterbook.search.PieceIndex;
import tenterbook.web.piece.TagFacet;

/**
 * Kills work of every kind at random moments, on archives that go on being used, and looks after each kill whether everything
 * acknowledged is there, nothing is half there, and the check finds nothing but files that no record names. After a kill of the
 * whole program it is started again, and the check must find nothing. Killing a process is not a power cut. Not part of the build:
 * {@code KillHarness KILLS MINUTES [SEED]} ends at whichever comes first.
 */
public final class KillHarness {
    private static final int KILLS_OF_AN_ARCHIVE = 32;
    private static final int PHOTOS = 6;
    private static final int BYTES = 400_000;
    private static final Pattern DIGEST = Pattern.compile("\\b[0-9a-f]{64}\\b");

    /** What one archive after another is used for, and what all of these share. */
    private static final class Common {
        private final int most;
        private final long until;
        private final Path around;
        private final List<String> warmWork;
        private final List<String> warmProgram;
        private final Map<Kind, Figures> figures = new EnumMap<>(Kind.class);
        /** Lines of each kind that acknowledged something. */
        private final Map<String, Integer> lines = new TreeMap<>();

        private int kills;
        private Throwable failed;

        private Common(int most, long until, Path around) throws Exception {
            this.most = most;
            this.until = until;
            this.around = around;
            for (Kind kind : Kind.values()) {
                figures.put(kind, new Figures());
            }
            WarmStart.useJars(around.resolve("jars"));
            warmWork = WarmStart.ofWork(around);
            warmProgram = WarmStart.ofProgram(around);
        }

        private synchronized boolean goesOn() {
            return kills < most && failed == null && System.nanoTime() < until;
        }

        private synchronized void fails(Throwable how) {
            if (failed == null) {
                failed = how;
            }
        }

        private synchronized void killed(Kind kind) {
            kills++;
            figures.get(kind).kills++;
            if (kills % 50 == 0) {
                System.out.println(kills + " kills by " + LocalTime.now());
            }
        }

        private synchronized void acknowledged(Kind kind, List<String> said) {
            for (String line : said) {
                String word = line.split(" ")[0];
                if (!word.equals("ready")) {
                    figures.get(kind).acknowledged++;
                    lines.merge(word, 1, Integer::sum);
                }
            }
        }

        private synchronized void unnamed(Kind kind, int files) {
            figures.get(kind).unnamed += files;
        }

        private synchronized void took(Kind kind, long millis) {
            figures.get(kind).millis += millis;
        }

        private synchronized void print() {
            System.out.printf("%-18s %6s %13s %14s %8s%n", "work", "kills", "acknowledged", "unnamed files", "seconds");
            figures.forEach((kind, of) -> System.out.printf(
                    "%-18s %6d %13d %14d %8d%n",
                    kind.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                    of.kills,
                    of.acknowledged,
                    of.unnamed,
                    of.millis / 1000));
            System.out.println("all " + kills + ", acknowledged " + lines);
        }
    }

    private static final class Figures {
        private int kills;
        private int acknowledged;
        private int unnamed;
        private long millis;
    }

    private final Random random;
    private final Common common;
    private final Path around;
    /** How long work that ends takes unhindered, in milliseconds from its beginning. */
    private final Map<Kind, Long> takes = new EnumMap<>(Kind.class);

    private Path studio;
    private Path bag;
    private Path disk;
    private ServedWork served;
    private long revisions;
    private int archives;
    private int killsHere;
    private final List<String> promises = new ArrayList<>();
    private final Set<String> unnamed = new TreeSet<>();
    /** Originals that had no record after a kill and must have one since. */
    private final Set<String> joined = new TreeSet<>();

    private KillHarness(Common common, Path around, long seed) {
        this.common = common;
        this.around = around;
        this.random = new Random(seed);
    }

    public static void main(String[] arguments) throws Exception {
        int most = Integer.parseInt(arguments[0]);
        long began = System.nanoTime();
        long until = began + Duration.ofMinutes(Long.parseLong(arguments[1])).toNanos();
        long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : new Random().nextLong();
        System.out.println("seed " + seed);
        Path around = Files.createTempDirectory("killed-work");
        Common common = new Common(most, until, around);
        List<Thread> lanes = new ArrayList<>();
        // Much of a kill is waiting, for the disk or for its moment.
        int count = 2 * Runtime.getRuntime().availableProcessors();
        for (int lane = 0; lane < count; lane++) {
            KillHarness harness =
                    new KillHarness(common, Files.createDirectory(around.resolve("lane" + lane)), seed + lane);
            int first = lane * Kind.values().length / count;
            lanes.add(new Thread(() -> harness.run(first)));
        }
        lanes.forEach(Thread::start);
        for (Thread lane : lanes) {
            lane.join();
        }
        common.print();
        System.out.printf("minutes %.1f%n", (System.nanoTime() - began) / 60e9);
        if (common.failed != null) {
            System.out.println("FAILED; see " + around);
            common.failed.printStackTrace(System.out);
            System.exit(1);
        }
        delete(around);
    }

    private void run(int first) {
        try {
            for (int n = first; common.goesOn(); n++) {
                Kind kind = Kind.values()[n % Kind.values().length];
                long began = System.nanoTime();
                kill(kind);
                common.took(kind, (System.nanoTime() - began) / 1_000_000);
            }
            leave();
        } catch (Exception | AssertionError e) {
            common.fails(e);
        }
    }

    /** A new archive, its bag, a folder for its backups, and enough pieces to sell. */
    private void begin() throws Exception {
        leave();
        Path here = Files.createDirectory(around.resolve("a" + archives++));
        studio = here.resolve("studio");
        bag = here.resolve("bag");
        disk = Files.createDirectory(here.resolve("disk"));
        served = new ServedWork(common.warmProgram, studio, disk);
        try (Archive archive = Demo.open(studio, PHOTOS, BYTES)) {
            new Pack(Demo.CLOCK).pack(archive, bag, Progress.UNWATCHED);
            revisions = archive.ledger().lastSequence();
            KilledWork.bringIn(archive, "FIRST", 100, here);
        }
        killsHere = 0;
        promises.clear();
        unnamed.clear();
        joined.clear();
    }

    /** The last kill of an archive is followed by a start too. */
    private void leave() throws Exception {
        if (studio != null) {
            served.whole(unnamed);
            joined.addAll(unnamed);
            unnamed.clear();
            look(Kind.SERVED_START, studio, promises);
            assertThat(unnamed).isEmpty();
            delete(studio.getParent());
        }
    }

    private void kill(Kind kind) throws Exception {
        if (studio == null || killsHere == KILLS_OF_AN_ARCHIVE) {
            begin();
        }
        Path target = target(kind);
        if (!kind.endless() && !takes.containsKey(kind)) {
            if (kind.served()) {
                takes.put(kind, served.whole(unnamed));
                joined.addAll(unnamed);
                unnamed.clear();
            } else {
                takes.put(kind, run(kind, target, Long.MAX_VALUE));
                whole(kind, target);
                delete(target);
            }
        }
        boolean encrypted = kind == Kind.ENCRYPTED_BACKUP || kind == Kind.SERVED_BACKUPS && random.nextBoolean();
        if (encrypted) {
            SharedBackupKey.giveTo(studio);
        }
        long millis = random.nextLong(0, most(kind) + 1);
        if (kind.served()) {
            serve(kind, millis);
        } else {
            run(kind, target, millis);
        }
        killsHere++;
        check(kind, target);
        if (encrypted) {
            Files.delete(studio.resolve(SharedBackupKey.NAME));
        }
        if (!kind.endless() && !kind.served() || kind == Kind.MIGRATION) {
            delete(target);
        }
    }

    /** Half of the kills fall after a whole round was acknowledged, half after the first sign of life. */
    private String word(Kind kind) {
        return random.nextBoolean() ? kind.word() : kind.served() ? "" : "ready";
    }

    /** After that it is killed within so many milliseconds: work that goes on is done several times in them. */
    private long most(Kind kind) {
        return switch (kind) {
            case SAVE, ACT, UPLOAD, MIGRATION, SERVED_FORMS, SERVED_ACTS, SERVED_PHOTOGRAPHS -> 600;
            case IMPORT, BACKUP, ENCRYPTED_BACKUP, SERVED_SHEETS, SERVED_BACKUPS -> 1800;
            case PACK, RESTORE, RESCUE, SERVED_START -> takes.get(kind) * 11 / 10;
        };
    }

    private void serve(Kind kind, long millis) throws Exception {
        if (kind == Kind.SERVED_START) {
            served.killedStart(millis);
        } else {
            List<String> now = served.killed(kind, unnamed, word(kind), millis);
            joined.addAll(unnamed);
            unnamed.clear();
            promises.addAll(now);
            common.acknowledged(kind, now);
        }
        common.killed(kind);
    }

    private Path target(Kind kind) throws IOException {
        if (kind == Kind.BACKUP || kind == Kind.ENCRYPTED_BACKUP) {
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
        Process child = KilledWork.start(
                common.warmWork, said, kind.name(), from.toString(), target.toString(), said.toString(), "0");
        String word = word(kind);
        while (child.isAlive()
                && (!Files.exists(said)
                        || Files.readAllLines(said).stream().noneMatch(line -> line.startsWith(word)))) {
            Thread.sleep(2);
        }
        long began = System.nanoTime();
        boolean ended = child.waitFor(millis, TimeUnit.MILLISECONDS);
        long ran = (System.nanoTime() - began) / 1_000_000;
        if (!ended) {
            child.destroyForcibly().waitFor();
            common.killed(kind);
        } else if (child.exitValue() != 0) {
            throw new IllegalStateException(kind + " failed: " + Files.readString(around.resolve("child.log")));
        }
        List<String> now = Files.exists(said) ? Files.readAllLines(said) : List.of();
        common.acknowledged(kind, now);
        (kind == Kind.MIGRATION ? migrated : promises).addAll(now);
        return ran;
    }

    private final List<String> migrated = new ArrayList<>();

    private void check(Kind kind, Path target) throws IOException {
        if (kind == Kind.MIGRATION) {
            try (Archive archive = Archive.open(target, Clock.systemUTC())) {
                there(archive, migrated);
                assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
            }
            migrated.clear();
            return;
        }
        look(kind, studio, promises);
        if (kind == Kind.BACKUP || kind == Kind.ENCRYPTED_BACKUP || kind == Kind.SERVED_BACKUPS) {
            backups();
        } else if (!kind.endless() && !kind.served()) {
            boolean done = promises.remove("whole");
            assertThat(!done || Files.exists(target))
                    .as("acknowledged %s", kind)
                    .isTrue();
            if (Files.exists(target)) {
                whole(kind, target);
            }
        }
    }

    /** The newest that was acknowledged has its name, the newest of all would come back, and the next one succeeds. */
    private void backups() throws IOException {
        Path newest = null;
        for (String line : promises) {
            if (line.startsWith("backup ")) {
                Path generation = Path.of(line.substring("backup ".length()));
                newest = generation.toString().contains("encrypted")
                                == Files.exists(studio.resolve(SharedBackupKey.NAME))
                        ? generation
                        : newest;
            }
        }
        Backup backup = new Backup(disk, Clock.systemUTC());
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            if (newest != null) {
                assertThat(newest).as("the newest acknowledged backup").exists();
                assertThat(backup.trial(archive, SharedBackupKey::passphrase, Progress.UNWATCHED))
                        .as("the newest backup")
                        .isEmpty();
            }
            KilledWork.awaitSecondAfter(Instant.now());
            assertThat(backup.make(archive, Progress.UNWATCHED).findings())
                    .as("the next backup")
                    .isEmpty();
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
            there(archive, promised);
            List<Finding> findings = ArchiveCheck.run(archive, Progress.UNWATCHED);
            assertThat(findings)
                    .as("findings after a killed %s", kind)
                    .allMatch(finding -> finding.consequence() == Consequence.UNNAMED);
            int before = unnamed.size();
            for (Finding finding : findings) {
                Matcher digest = DIGEST.matcher(finding.where());
                assertThat(digest.find()).as(finding.toString()).isTrue();
                unnamed.add(digest.group());
            }
            common.unnamed(kind, unnamed.size() - before);
            List<String> waiting = archive.ledger().unreferenced(Kinds.PHOTO, Kinds.PIECE).stream()
                    .map(saved -> saved.record().digest().hex())
                    .toList();
            assertThat(waiting).as("photographs that joined after a kill").containsAll(joined);
            if (random.nextInt(30) == 0) {
                try (TagTable tags = TagTable.open(archive);
                        PieceIndex index = PieceIndex.open(archive, new TagFacet(tags))) {
                    assertThat(tags.check(Progress.UNWATCHED)).isEmpty();
                    assertThat(index.check(Progress.UNWATCHED)).isEmpty();
                }
            }
        }
    }

    private static void there(Archive archive, List<String> promised) throws IOException {
        for (String line : promised) {
            promised(archive, line.split(" "));
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
            case "piece" ->
                assertThat(archive.piece(words[1]).orElseThrow().title())
                        .as("acknowledged piece %s %s", words[1], words[2])
                        .isIn(words[2], "second");
            case "shown" ->
                assertThat(archive.piece(words[1]).orElseThrow().photos())
                        .as("photographs of %s", words[1])
                        .anyMatch(photo -> photo.photo().hex().equals(words[2]));
            case "waits", "begun" -> {
                ImportFolder imports = new ImportFolder(archive.folder().root());
                ImportFolder.Entry entry = imports.find(words[1]).orElseThrow();
                assertThat(words[0].equals("begun") && entry.waits())
                        .as("waits")
                        .isFalse();
                if (words[0].equals("waits")) {
                    assertThat(imports.sheet(entry)).hasSize(Long.parseLong(words[2]));
                }
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
