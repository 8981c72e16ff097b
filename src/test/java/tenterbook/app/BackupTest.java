package tenterbook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static tenterbook.app.Ran.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.Demo;
import tenterbook.exchange.RestoredSample;
import tenterbook.exchange.backup.Backup;
import tenterbook.exchange.backup.BackupNote;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.words.Refusal;

/** A backup made while the archive is in use comes back whole, copies nothing twice, and damage in it is found. */
class BackupTest {
    @TempDir
    Path around;

    private Path studio;
    private Path disk;

    @BeforeEach
    void restore() throws IOException {
        studio = around.resolve("studio");
        RestoredSample.copyTo(studio);
        disk = Files.createDirectory(around.resolve("disk"));
    }

    private Path backup() {
        return disk.resolve("studio-backup");
    }

    private static Clock at(String moment) {
        return Clock.fixed(Instant.parse(moment), ZoneOffset.UTC);
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }

    @Test
    void aBackupMadeBesideTheRunningProgramComesBackWhole() throws IOException {
        String last;
        try (Archive running = Archive.open(studio, Clock.systemUTC())) {
            running.ledger()
                    .write("Inês", act -> act.create(Kinds.PARTY, new Party(new PartyId("new"), "Nova", "", "", "")));
            last = running.ledger().lastHash().hex();
            Ran ran = run("backup", "--archive", studio, "--to", disk, "--trial");
            assertThat(ran.code()).as(ran.out() + ran.err()).isZero();
            assertThat(ran.out()).contains("The trial restore succeeded");
        }
        assertThat(BackupNote.in(studio).lastGood()).isPresent();
        assertThat(files(backup().resolve("photos"))).hasSameSizeAs(files(studio.resolve("photos")));
        Map<String, Digest> before = CheckedBagTest.files(backup());
        Path again = around.resolve("again");
        Ran checked = run("check", "--archive", disk);
        assertThat(checked.code()).as(checked.out()).isZero();
        assertThat(checked.out()).contains("can be restored");
        assertThat(run("restore", "--from", disk, "--archive", again).code()).isZero();
        try (Archive back = Archive.open(again, Clock.systemUTC())) {
            assertThat(back.ledger().lastHash().hex()).isEqualTo(last);
        }
        assertThat(CheckedBagTest.files(again.resolve("photos")))
                .isEqualTo(CheckedBagTest.files(studio.resolve("photos")));
        assertThat(CheckedBagTest.files(backup())).isEqualTo(before);
    }

    @Test
    void whichTrialIsAskedForIsJudgedBeforeABackupIsMade() throws IOException {
        for (String which : List.of("--trial=", "--trial=2019", "--trial=newes")) {
            Ran ran = run("backup", "--archive", studio, "--to", disk, which);
            assertThat(ran.code()).isEqualTo(1);
            assertThat(ran.err()).contains("No backup of that name is there");
            assertThat(CheckedBagTest.files(disk)).isEmpty();
        }
        Ran all = run("backup", "--archive", studio, "--to", disk, "--trial=ALL");
        assertThat(all.code()).as(all.out() + all.err()).isZero();
        assertThat(all.out()).contains("The trial restore succeeded");
    }

    @Test
    void onlyWhatIsNewIsCopiedAndOlderLedgersGoByTheRule() throws IOException {
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            Backup.Made first = new Backup(disk, at("2024-01-01T10:00:00Z")).make(archive, Progress.UNWATCHED);
            assertThat(first.copied()).isPositive();
            int removed = 0;
            for (int day = 2; day <= 10; day++) {
                Backup.Made next =
                        new Backup(disk, at("2024-01-%02dT10:00:00Z".formatted(day))).make(archive, Progress.UNWATCHED);
                assertThat(next.copied()).isZero();
                assertThat(next.bytes()).isZero();
                removed += next.removed();
            }
            try (Stream<Path> ledgers = Files.list(backup().resolve("ledgers"))) {
                assertThat(ledgers.map(path -> path.getFileName().toString().substring(0, 10)))
                        .as("the last seven, and the last of the first week, which is one of them or not")
                        .containsExactlyInAnyOrder(
                                "2024-01-04",
                                "2024-01-05",
                                "2024-01-06",
                                "2024-01-07",
                                "2024-01-08",
                                "2024-01-09",
                                "2024-01-10");
            }
            assertThat(removed).isEqualTo(3);
        }
    }

    @Test
    void whatAKilledBackupLeftIsClearedByTheNext() throws IOException {
        Path left = Files.createDirectories(backup().resolve("ledgers/.new.unfinished-1/whole/data"));
        Files.writeString(left.resolve("ledger.db"), "half");
        Path part = Files.createDirectories(backup().resolve("photos/arriving")).resolve("1.part");
        Files.writeString(part, "half");
        assertThat(run("backup", "--archive", studio, "--to", disk).code()).isZero();
        assertThat(left).doesNotExist();
        assertThat(part).doesNotExist();
    }

    @Test
    void aDiskThatIsNotThereIsSaidAndMadeNowhere() {
        Path gone = around.resolve("gone");
        Ran ran = run("backup", "--archive", studio, "--to", gone);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).contains("is not there").contains("Connect the disk");
        assertThat(gone).doesNotExist();
        assertThat(BackupNote.in(studio).lastGood()).isEmpty();
        Ran none = run("backup", "--archive", studio);
        assertThat(none.code()).isEqualTo(1);
        assertThat(none.err()).contains("No folder for backups is chosen");
    }

    @Test
    void theTrialFindsAPhotographThatChangedOnTheDiskAndALedgerThatDiffers() throws Exception {
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            Backup backup = new Backup(disk, Clock.systemUTC());
            backup.make(archive, Progress.UNWATCHED);
            assertThat(backup.trial(archive, Progress.UNWATCHED)).isEmpty();
            Path photo = files(backup().resolve("photos")).get(0);
            byte[] whole = Files.readAllBytes(photo);
            byte[] bytes = whole.clone();
            bytes[bytes.length / 2] ^= 1;
            Files.write(photo, bytes);
            assertThat(backup.trial(archive, Progress.UNWATCHED))
                    .singleElement()
                    .satisfies(finding -> assertThat(finding.what()).contains("its SHA-256 is"));
            Files.delete(photo);
            assertThat(backup.trial(archive, Progress.UNWATCHED))
                    .singleElement()
                    .satisfies(finding -> assertThat(finding.what()).contains("its original is missing"));
            Files.write(photo, whole);
        }
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + studio.resolve("ledger.db"));
                var statement = connection.createStatement()) {
            statement.execute("DROP TRIGGER revisions_are_never_changed");
            statement.execute("UPDATE revisions SET hash = '" + "ab".repeat(32) + "' WHERE sequence = 4");
        }
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            assertThat(new Backup(disk, Clock.systemUTC()).trial(archive, Progress.UNWATCHED))
                    .singleElement()
                    .satisfies(finding -> assertThat(finding.where()).contains("revision 4 "));
        }
    }

    @Test
    void anOlderGenerationIsTriedByItsNameAndAllByChoice() throws IOException {
        try (Archive archive = Demo.open(around.resolve("small"))) {
            for (int day = 1; day <= 3; day++) {
                new Backup(disk, at("2024-10-0%dT10:00:00Z".formatted(day))).make(archive, Progress.UNWATCHED);
            }
            Path ledger = disk.resolve("small-backup/ledgers/2024-10-02T100000Z/data/ledger.jsonl");
            byte[] bytes = Files.readAllBytes(ledger);
            bytes[bytes.length / 2] ^= 1;
            Files.write(ledger, bytes);
            assertThat(tried(archive, Backup.NEWEST).findings()).isEmpty();
            Backup.Tried first = tried(archive, "2024-10-01");
            assertThat(first.findings()).isEmpty();
            assertThat(first.summary().inEnglish()).contains("paper of the backup 2024-10-01T100000Z was read");
            Backup.Tried all = tried(archive, Backup.ALL);
            assertThat(all.findings())
                    .isNotEmpty()
                    .allSatisfy(found -> assertThat(found.where()).startsWith("2024-10-02T100000Z, "));
            assertThat(all.summary().inEnglish()).contains("Of 3 backups (2024-10-01T100000Z, 2024-10-02T100000Z, ");
            assertThatThrownBy(() -> tried(archive, "2023"))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("the beginning of one of these: 2024-10-01T100000Z, 2024-10-02");
        }
    }

    private Backup.Tried tried(Archive archive, String which) {
        return new Backup(disk, Clock.systemUTC())
                .trial(
                        archive,
                        which,
                        () -> {
                            throw new AssertionError("They are not encrypted");
                        },
                        Progress.UNWATCHED);
    }

    @Test
    void aLedgerThatIsOlderThanItsBackupPushesNoneOut() throws IOException {
        Files.copy(studio.resolve("ledger.db"), around.resolve("older.db"));
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            archive.ledger()
                    .write("Inês", act -> act.create(Kinds.PARTY, new Party(new PartyId("new"), "Nova", "", "", "")));
        }
        assertThat(run("backup", "--archive", studio, "--to", disk).code()).isZero();
        Files.copy(
                around.resolve("older.db"),
                studio.resolve("ledger.db"),
                java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        Files.delete(studio.resolve("last-written"));
        Map<String, Digest> before = CheckedBagTest.files(backup().resolve("ledgers"));
        Ran ran = run("backup", "--archive", studio, "--to", disk);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).contains("which this ledger does not have");
        assertThat(CheckedBagTest.files(backup().resolve("ledgers"))).isEqualTo(before);
    }

    @Test
    void anArchiveThatLacksAPhotographIsBackedUpButNoGoodBackup() throws IOException {
        Files.delete(files(studio.resolve("photos")).get(0));
        Ran ran = run("backup", "--archive", studio, "--to", disk);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.out()).contains("its original is missing").contains("What is safe: every record");
        assertThat(BackupNote.in(studio).lastGood()).isEmpty();
    }
}
