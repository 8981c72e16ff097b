package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.function.Supplier;
import org.jdbi.v3.core.JdbiException;
import tenterbook.archive.Archive;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.exchange.PackRefused;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.exchange.openpgp.BackupKey;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Backups of an archive in a folder on another disk, while the program runs: a bag of the ledger for each, and only those
 * photographs and papers that are not there yet. Each is read back before it gets its name. They are encrypted where the archive has
 * a key for that ({@link ArchiveKey}).
 */
public final class Backup {
    private final Clock clock;
    private final Path folder;

    /** @param folder must be there: a disk that is not connected must not become a folder on this one */
    public Backup(Path folder, Clock clock) {
        this.folder = folder.toAbsolutePath().normalize();
        this.clock = clock;
    }

    /**
     * What was made.
     *
     * @param copied photographs and papers that were new
     * @param bytes of those
     * @param removed older generations of the ledger that were deleted by the rule
     * @param findings missing or changed files of the archive itself; the backup is a good one only without any
     */
    public record Made(
            Path generation, long lastSequence, long copied, long bytes, int removed, List<Finding> findings) {
        public Made {
            findings = List.copyOf(findings);
        }

        public boolean good() {
            return findings.isEmpty();
        }

        /** One sentence. */
        public Message summary() {
            return Message.of(
                    "backup.made",
                    "folder",
                    generation,
                    "sequence",
                    lastSequence,
                    "copied",
                    copied,
                    "removed",
                    removed);
        }
    }

    /**
     * Makes one, and keeps its time in the archive's folder where it is good.
     *
     * @throws PackRefused with a sentence, where the folder is not there or cannot be written, where the ledger is damaged or
     *     older than what the backup has; the backups made before stay as they are
     * @throws Progress.Cancelled if asked to stop
     */
    public Made make(Archive archive, Progress progress) {
        BackupForm backup = form(archive);
        try {
            Files.createDirectories(backup.root().resolve("ledgers"));
            try (ArchiveFolder held = ArchiveFolder.hold(backup.root())) {
                held.mustStillBeHeld();
                refuseOther(archive, backup);
                Made made = write(archive, backup, progress);
                BackupNote note = BackupNote.in(archive.folder().root()).to(folder.toString());
                (made.good() ? note.good(clock.instant()) : note)
                        .keep(archive.folder().root());
                return made;
            }
        } catch (IOException e) {
            throw new PackRefused(folder.toString(), Message.of("backup.not-written", "why", e.toString()));
        } catch (ArchiveProblem e) {
            throw new PackRefused(folder.toString(), Message.of("backup.not-made", "why", Explained.of(e)));
        } catch (JdbiException e) {
            throw new PackRefused("ledger.db", Message.of("exchange.pack.ledger-not-read", "why", Explained.of(e)));
        }
    }

    private BackupForm form(Archive archive) {
        if (!Files.isDirectory(folder)) {
            throw new PackRefused(folder.toString(), Message.of("backup.not-there"));
        }
        Path own = archive.folder().root().toAbsolutePath().normalize();
        if (folder.startsWith(own)) {
            throw new PackRefused(folder.toString(), Message.of("exchange.pack.inside-archive"));
        }
        if (!ArchiveKey.in(own)) {
            return new PlainForm(BackupFolder.on(folder, own), clock);
        }
        try {
            BackupKey key = ArchiveKey.read(own);
            return new EncryptedForm(EncryptedFolder.on(folder, own, key), key, clock);
        } catch (IOException e) {
            // Never a plain backup instead of one that was to be encrypted.
            throw new PackRefused(own.resolve(ArchiveKey.NAME).toString(), Message.of("backup.encrypted.no-key"));
        }
    }

    /** Generations of another archive, or later ones of this, are not to be pushed out by this ledger. */
    private static void refuseOther(Archive archive, BackupForm backup) throws IOException {
        NavigableMap<Instant, Path> made = backup.generations();
        if (made.isEmpty()) {
            return;
        }
        Path newest = made.lastEntry().getValue();
        BackupForm.LedgerEnd end = backup.end(newest);
        List<Revision> there =
                end.sequence() == 0 ? List.of() : archive.ledger().after(end.sequence() - 1, 1);
        if (end.sequence() > 0 && (there.isEmpty() || !there.get(0).hash().hex().equals(end.hash()))) {
            throw new PackRefused(newest.toString(), Message.of("backup.other", "sequence", end.sequence()));
        }
    }

    private Made write(Archive archive, BackupForm backup, Progress progress) throws IOException {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        Path place = backup.generation(now);
        if (Files.exists(place)) {
            throw new PackRefused(place.toString(), Message.of("exchange.pack.already-there"));
        }
        List<Finding> findings = ArchiveCheck.ledger(archive, progress);
        if (!findings.isEmpty()) {
            throw new PackRefused(findings, Message.of("exchange.pack.mend"));
        }
        BackupForm.Added added = backup.add(archive, now, progress);
        List<Finding> damage = added.bag().damage();
        int removed = damage.isEmpty() ? removeOld(backup, now) : 0;
        return new Made(
                place,
                added.bag().lastSequence(),
                added.files().copied(),
                added.files().bytes(),
                removed,
                damage);
    }

    private static int removeOld(BackupForm backup, Instant now) throws IOException {
        NavigableMap<Instant, Path> all = backup.generations();
        Set<Instant> kept = BackupRule.kept(all.keySet(), now);
        int removed = 0;
        for (Map.Entry<Instant, Path> each : all.entrySet()) {
            if (!kept.contains(each.getKey())) {
                backup.delete(each.getValue());
                removed++;
            }
        }
        return removed;
    }

    /** As {@link #trial(Archive, Supplier, Progress)} for backups that are not encrypted. */
    public List<Finding> trial(Archive archive, Progress progress) {
        return trial(
                archive,
                () -> {
                    throw Refusal.of("backup.passphrase.wanted");
                },
                progress);
    }

    /**
     * A trial restore of the newest generation: every file of it and every photograph and paper that it names is read against
     * its digest, its ledger is opened from a copy and checked, and each revision is compared by its hash, and each record by
     * its text, with those of the archive. Changes nothing in the backup.
     *
     * @param passphrase asked for where the backup is encrypted
     * @return what differs; empty where the archive, as it was at that backup, would come back
     * @throws Refusal where the passphrase is another
     */
    public List<Finding> trial(Archive archive, Supplier<Passphrase> passphrase, Progress progress) {
        BackupForm backup = form(archive);
        try {
            NavigableMap<Instant, Path> made = backup.generations();
            if (made.isEmpty()) {
                return List.of(new Finding(folder.toString(), Message.of("backup.none")));
            }
            return backup.trial(made.lastEntry().getValue(), archive, passphrase, progress);
        } catch (IOException e) {
            throw new PackRefused(folder.toString(), Message.of("backup.not-read", "why", e.toString()));
        }
    }
}
