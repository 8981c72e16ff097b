package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.backup.ArchiveKey;
import tenterbook.exchange.backup.Backup;
import tenterbook.exchange.backup.EncryptedCheck;
import tenterbook.exchange.backup.EncryptedFolder;
import tenterbook.exchange.backup.EncryptedRestore;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.words.Refusal;

/** An encrypted backup shows nothing, comes back whole with its passphrase, and says so where it would not. */
class EncryptedBackupTest {
    private static final String FIRST = "2024-10-01T10:00:00Z";

    @TempDir
    Path around;

    private Path studio;
    private Path disk;
    private Archive archive;

    @BeforeEach
    void open() throws IOException {
        studio = around.resolve("studio");
        disk = Files.createDirectory(around.resolve("disk"));
        archive = Demo.open(studio);
        SharedBackupKey.giveTo(studio);
    }

    @AfterEach
    void close() {
        archive.close();
    }

    private Path folder() {
        return disk.resolve("studio-backup-encrypted");
    }

    private Backup at(String moment) {
        return new Backup(disk, Clock.fixed(Instant.parse(moment), ZoneOffset.UTC));
    }

    private Backup.Made make(String moment) {
        Backup.Made made = at(moment).make(archive, Progress.UNWATCHED);
        assertThat(made.findings()).isEmpty();
        return made;
    }

    private List<Finding> trial() {
        return at(FIRST).trial(archive, SharedBackupKey::passphrase, Progress.UNWATCHED);
    }

    private List<Finding> check() throws IOException {
        return EncryptedCheck.run(EncryptedFolder.generation(disk).orElseThrow(), Progress.UNWATCHED)
                .findings();
    }

    private Restored restore(Path from, Path to) throws IOException {
        return new EncryptedRestore(Clock.systemUTC())
                .restore(
                        EncryptedFolder.generation(from).orElseThrow(),
                        to,
                        SharedBackupKey::passphrase,
                        Progress.UNWATCHED);
    }

    private static Map<String, Digest> files(Path folder) throws IOException {
        Map<String, Digest> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(file).toString(), Digest.of(Files.readAllBytes(file)));
            }
        }
        return files;
    }

    /** The only file whose path from the folder ends so. */
    private Path only(String within, String ending) throws IOException {
        try (Stream<Path> all = Files.walk(folder().resolve(within))) {
            return all.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static void flip(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        bytes[bytes.length / 2] ^= 1;
        Files.write(file, bytes);
    }

    @Test
    void itComesBackWholeAndNothingOfItCanBeReadBefore() throws IOException {
        String last = archive.ledger().lastHash().hex();
        Map<String, Digest> photos = files(studio.resolve("photos"));
        assertThat(make(FIRST).copied()).isEqualTo(3);
        assertThat(trial()).isEmpty();
        assertThat(check()).isEmpty();
        byte[] photo = Files.readAllBytes(
                studio.resolve("photos").resolve(photos.keySet().iterator().next()));
        String part = new String(photo, 1000, 16, StandardCharsets.ISO_8859_1);
        for (String file : files(folder()).keySet()) {
            assertThat(new String(Files.readAllBytes(folder().resolve(file)), StandardCharsets.ISO_8859_1))
                    .as(file)
                    .doesNotContain(part, "SQLite format", "Vermia", "PK\u0003\u0004", "Valderim");
        }
        Map<String, Digest> before = files(folder());
        Path again = around.resolve("again");
        Restored restored = restore(disk, again);
        assertThat(restored.lastHash().hex()).isEqualTo(last);
        assertThat(files(again.resolve("photos"))).isEqualTo(photos);
        assertThat(files(folder())).isEqualTo(before);
        assertThat(ArchiveKey.in(again))
                .as("its next backups are encrypted too")
                .isTrue();
        try (Stream<Path> left = Stream.concat(Files.list(around), Files.list(studio))) {
            assertThat(left.map(path -> path.getFileName().toString())).noneMatch(name -> name.contains("unfinished"));
        }
    }

    @Test
    void theKeyIsInNoBagAndNothingStrange() throws IOException {
        Path bag = around.resolve("bag");
        new Pack(Demo.CLOCK).pack(archive, bag, Progress.UNWATCHED);
        assertThat(files(bag).keySet()).noneMatch(file -> file.endsWith(".asc"));
        assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
    }

    @Test
    void onlyWhatIsNewIsEncryptedAndOlderLedgersGoByTheRule() throws IOException {
        make(FIRST);
        Map<String, Digest> before = files(folder().resolve("photos"));
        for (int day = 2; day <= 9; day++) {
            Backup.Made made = make("2024-10-%02dT10:00:00Z".formatted(day));
            assertThat(made.copied()).isZero();
            assertThat(made.bytes()).isZero();
        }
        assertThat(files(folder().resolve("photos"))).as("the very same bytes").isEqualTo(before);
        Digest taken = Demo.photo(archive, 99, 7000);
        archive.ledger().write("Inês", act -> act.create(Kinds.PHOTO, Demo.record(taken, 7000)));
        assertThat(make("2024-10-10T10:00:00Z").copied()).isEqualTo(1);
        assertThat(files(folder().resolve("photos")))
                .containsAllEntriesOf(before)
                .hasSize(4);
        assertThat(files(folder().resolve("ledgers")).keySet())
                .as("the last seven, and the last of the first week (Sunday 2024-10-06 is one of them)")
                .hasSize(14)
                .contains("2024-10-04T100000Z.txt", "2024-10-04T100000Z.zip.pgp", "2024-10-10T100000Z.txt")
                .doesNotContain("2024-10-03T100000Z.txt", "2024-10-03T100000Z.zip.pgp");
        assertThat(trial()).isEmpty();
        Path older = folder().resolve("ledgers/2024-10-04T100000Z.txt");
        assertThat(restore(older, around.resolve("older")).photos()).isEqualTo(3);
    }

    @Test
    void oneFlippedBitIsFoundWithAndWithoutThePassphrase() throws IOException {
        make(FIRST);
        for (Path file : List.of(only("photos", ".pgp"), only("ledgers", ".pgp"))) {
            byte[] whole = Files.readAllBytes(file);
            flip(file);
            String name = folder().relativize(file).toString();
            assertThat(check())
                    .singleElement()
                    .satisfies(found -> assertThat(found.where()).isEqualTo(name));
            assertThat(trial())
                    .singleElement()
                    .satisfies(found -> assertThat(found.where()).isEqualTo(name));
            Path again = around.resolve("again");
            assertThatThrownBy(() -> restore(disk, again))
                    .isInstanceOf(BagRefused.class)
                    .hasMessageContaining(name);
            assertThat(again).doesNotExist();
            Files.write(file, whole);
        }
        flip(folder().resolve("key.asc"));
        assertThat(check())
                .singleElement()
                .satisfies(found -> assertThat(found.where()).isEqualTo("key.asc"));
        assertThatThrownBy(() -> restore(disk, around.resolve("again")))
                .isInstanceOf(BagRefused.class)
                .hasMessageContaining("key.asc");
        make("2024-10-02T10:00:00Z");
        assertThat(check()).as("the archive has a copy of the key").isEmpty();
        flip(folder().resolve("ledgers/2024-10-02T100000Z.txt"));
        assertThat(check())
                .singleElement()
                .satisfies(found -> assertThat(found.what()).contains("not as it was written"));
        assertThatThrownBy(() -> make("2024-10-03T10:00:00Z"))
                .isInstanceOf(PackRefused.class)
                .hasMessageContaining("not as it was written");
    }

    @Test
    void anotherPassphraseChangesNothing() throws IOException {
        make(FIRST);
        Map<String, Digest> before = files(around);
        EncryptedFolder.Generation meant = EncryptedFolder.generation(disk).orElseThrow();
        Path again = around.resolve("again");
        assertThatThrownBy(() -> new EncryptedRestore(Clock.systemUTC())
                        .restore(meant, again, () -> Passphrase.of("two herons at the weir"), Progress.UNWATCHED))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("does not open the backup");
        assertThatThrownBy(() -> at(FIRST).trial(archive, Progress.UNWATCHED)).isInstanceOf(Refusal.class);
        assertThat(files(around)).isEqualTo(before);
    }

    @Test
    void whatAKilledBackupLeftIsTakenForNothingAndWrittenAnew() throws IOException {
        Path photo = folder().resolve("photos");
        String name = files(studio.resolve("photos")).keySet().iterator().next();
        Path half = photo.resolve(name + ".pgp");
        Files.createDirectories(half.getParent());
        Files.write(half, new byte[9000]);
        Path part = Files.createDirectories(photo.resolve("arriving")).resolve("1.part");
        Path ledger = Files.createDirectories(folder().resolve("ledgers")).resolve("2024-09-30T100000Z.zip.pgp");
        Path list = folder().resolve("ledgers/2024-09-30T100000Z.txt.part");
        Path plain = Files.createDirectories(studio.resolve(".backup.unfinished-1/whole/data"))
                .resolve("ledger.db");
        for (Path left : List.of(part, ledger, list, plain)) {
            Files.writeString(left, "half");
        }
        assertThat(EncryptedFolder.generation(disk)).isEmpty();
        assertThat(make(FIRST).copied()).isEqualTo(3);
        assertThat(List.of(part, ledger, list, plain))
                .allSatisfy(left -> assertThat(left).doesNotExist());
        assertThat(trial()).isEmpty();
    }

    @Test
    void stoppedAnywhereItLeavesTheBackupBeforeIt() throws IOException {
        make(FIRST);
        Digest taken = Demo.photo(archive, 99, 7000);
        archive.ledger().write("Inês", act -> act.create(Kinds.PHOTO, Demo.record(taken, 7000)));
        int stopped = 0;
        for (int step = 1; ; step += 9) {
            try {
                at("2024-10-02T10:00:00Z").make(archive, new Stopping(step));
                break;
            } catch (Progress.Cancelled e) {
                stopped++;
                assertThat(check()).isEmpty();
                assertThat(EncryptedFolder.generation(disk).orElseThrow().at()).isEqualTo(Instant.parse(FIRST));
            }
        }
        assertThat(stopped).isGreaterThan(5);
        assertThat(trial()).isEmpty();
    }

    /** The first backup of a large archive may take days. */
    @Test
    void oneThatWasStoppedIsGoneOnWith() throws IOException {
        long stored = 0;
        for (int step = 1; stored == 0; step += 3) {
            try {
                at(FIRST).make(archive, new Stopping(step));
            } catch (Progress.Cancelled e) {
                assertThat(files(folder().resolve("ledgers")).keySet()).noneMatch(name -> name.endsWith(".txt"));
            }
            if (Files.exists(folder().resolve("photos"))) {
                stored = files(folder().resolve("photos")).size();
            }
        }
        assertThat(stored).isBetween(1L, 2L);
        Files.writeString(folder().resolve("unfinished.txt"), "0123", StandardOpenOption.APPEND);
        assertThat(make("2024-10-02T10:00:00Z").copied()).isEqualTo(3 - stored);
        assertThat(folder().resolve("unfinished.txt")).doesNotExist();
        assertThat(check()).isEmpty();
        assertThat(trial()).isEmpty();
    }

    @Test
    void aFileThatIsMissingOrCutOffIsWrittenAgainAndOlderBackupsOpenWithIt() throws IOException {
        make(FIRST);
        Path file = only("photos", ".pgp");
        Files.write(file, new byte[100]);
        assertThat(check()).hasSize(1);
        assertThat(make("2024-10-02T10:00:00Z").copied()).isEqualTo(1);
        assertThat(check()).isEmpty();
        assertThat(trial()).isEmpty();
        Path first = folder().resolve("ledgers/2024-10-01T100000Z.txt");
        assertThat(EncryptedCheck.run(EncryptedFolder.generation(first).orElseThrow(), Progress.UNWATCHED)
                        .findings())
                .isEmpty();
        assertThat(restore(first, around.resolve("again")).photos()).isEqualTo(3);
    }

    @Test
    void aLedgerThatIsOlderThanItsBackupPushesNoneOut() throws IOException {
        Path older = around.resolve("older/studio");
        Archive before = archive;
        Files.createDirectories(older);
        archive.ledger().copyToKeep(older.resolve("ledger.db"));
        archive.ledger().write("Inês", act -> act.create(Kinds.BOARD_PAIR, Demo.board("B02", "Heron")));
        make(FIRST);
        Map<String, Digest> kept = files(folder());
        archive = Archive.open(older, Demo.CLOCK);
        SharedBackupKey.giveTo(older);
        assertThatThrownBy(() -> make("2024-10-02T10:00:00Z"))
                .isInstanceOf(PackRefused.class)
                .hasMessageContaining("which this ledger does not have");
        assertThat(files(folder())).isEqualTo(kept);
        before.close();
    }

    @Test
    void aDamagedKeyMakesNoPlainBackupInstead() throws IOException {
        flip(studio.resolve(SharedBackupKey.NAME));
        assertThatThrownBy(() -> make(FIRST))
                .isInstanceOf(PackRefused.class)
                .hasMessageContaining(SharedBackupKey.NAME);
        assertThat(files(disk)).isEmpty();
    }

    @Test
    void afterAnotherPassphraseWasChosenBothFoldersOpenWithTheirOwn() throws IOException {
        make(FIRST);
        Map<String, Digest> former = files(folder());
        ArchiveKey.putAside(studio);
        make("2024-10-02T10:00:00Z");
        assertThat(EncryptedFolder.generation(disk))
                .as("the newest is not encrypted")
                .isEmpty();
        String words = "eight swifts over the roof";
        ArchiveKey.choose(studio, Passphrase.chosen(words, words), Demo.CLOCK.instant());
        assertThat(make("2024-10-03T10:00:00Z").copied()).isEqualTo(3);
        assertThat(files(folder())).isEqualTo(former);
        assertThat(EncryptedFolder.generation(disk).orElseThrow().folder().root())
                .isEqualTo(disk.resolve("studio-backup-encrypted-2"));
        assertThat(at(FIRST).trial(archive, () -> Passphrase.of(words), Progress.UNWATCHED))
                .isEmpty();
        assertThat(restore(folder(), around.resolve("again")).photos()).isEqualTo(3);
        assertThatThrownBy(() -> ArchiveKey.choose(studio, Passphrase.of(words), Demo.CLOCK.instant()))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void aDiskWithBackupsOfSeveralArchivesIsAskedAbout() throws IOException {
        make(FIRST);
        Files.createDirectory(disk.resolve("other-backup"));
        assertThatThrownBy(() -> EncryptedFolder.generation(disk))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("several archives");
        assertThat(EncryptedFolder.generation(folder())).isPresent();
    }
}
