package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import org.jdbi.v3.core.JdbiException;
import tenterbook.archive.Archive;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.exchange.Bag;
import tenterbook.exchange.BagFilling;
import tenterbook.exchange.BagVerification;
import tenterbook.exchange.DamageAdvice;
import tenterbook.exchange.PackRefused;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.exchange.bag.Checked;
import tenterbook.exchange.kept.BackupFiles;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.exchange.kept.UnfinishedFolder;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Backups of an archive in a folder on another disk, while the program runs: a bag of the ledger for each, and only those
 * photographs and papers that are not there yet. Each is read back before it gets its name.
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
        BackupFolder backup = fit(archive);
        try {
            Files.createDirectories(backup.ledgers());
            try (ArchiveFolder held = ArchiveFolder.hold(backup.root())) {
                refuseOther(archive, backup);
                Made made = write(archive, new BackupFolder(held.root()), progress);
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

    private BackupFolder fit(Archive archive) {
        if (!Files.isDirectory(folder)) {
            throw new PackRefused(folder.toString(), Message.of("backup.not-there"));
        }
        Path own = archive.folder().root().toAbsolutePath().normalize();
        if (folder.startsWith(own)) {
            throw new PackRefused(folder.toString(), Message.of("exchange.pack.inside-archive"));
        }
        return BackupFolder.on(folder, own);
    }

    /** Generations of another archive, or later ones of this, are not to be pushed out by this ledger. */
    private static void refuseOther(Archive archive, BackupFolder backup) throws IOException {
        NavigableMap<Instant, Path> made = backup.generations();
        if (made.isEmpty()) {
            return;
        }
        Path newest = made.lastEntry().getValue();
        String info = Files.readString(newest.resolve("bag-info.txt"));
        long sequence = Long.parseLong(labelled(info, "Tenterbook-Last-Sequence", "0"));
        List<Revision> there = sequence == 0 ? List.of() : archive.ledger().after(sequence - 1, 1);
        String hash = labelled(info, "Tenterbook-Last-Hash", "");
        if (sequence > 0 && (there.isEmpty() || !there.get(0).hash().hex().equals(hash))) {
            throw new PackRefused(newest.toString(), Message.of("backup.other", "sequence", sequence));
        }
    }

    private static String labelled(String info, String label, String otherwise) {
        return info.lines()
                .filter(line -> line.startsWith(label + ": "))
                .map(line -> line.substring(label.length() + 2).strip())
                .findFirst()
                .orElse(otherwise);
    }

    private Made write(Archive archive, BackupFolder backup, Progress progress) throws IOException {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        Path place = backup.generation(now);
        if (Files.exists(place)) {
            throw new PackRefused(place.toString(), Message.of("exchange.pack.already-there"));
        }
        List<Finding> findings = ArchiveCheck.ledger(archive, progress);
        if (!findings.isEmpty()) {
            throw new PackRefused(findings, Message.of("exchange.pack.mend"));
        }
        Files.writeString(
                backup.root().resolve("READ-ME-FIRST.txt"),
                Message.of("backup.read-me").inEnglish() + "\n");
        BackupFiles files = new BackupFiles(backup.root());
        // One name for all, so that what a killed backup left is cleared by the next.
        try (UnfinishedFolder unfinished =
                UnfinishedFolder.beside(backup.ledgers().resolve("new"))) {
            LocalDate today = LocalDate.ofInstant(now, ZoneOffset.UTC);
            Bag bag = new BagFilling(archive, unfinished.whole(), place, today, progress, findings, files)
                    .fill(DamageAdvice.NOTED, unfinished.cleared());
            List<Finding> wrong = new ArrayList<>(BagVerification.inBackup(
                    unfinished.whole(), backup, unfinished.aside("read-back"), clock, progress));
            wrong.removeAll(bag.damage());
            if (!wrong.isEmpty()) {
                throw new PackRefused(wrong, Message.of("exchange.pack.not-restorable"));
            }
            progress.orStop();
            unfinished.moveTo(place);
            int removed = bag.damage().isEmpty() ? removeOld(backup, now) : 0;
            return new Made(place, bag.lastSequence(), files.copied(), files.bytes(), removed, bag.damage());
        }
    }

    private static int removeOld(BackupFolder backup, Instant now) throws IOException {
        NavigableMap<Instant, Path> all = backup.generations();
        Set<Instant> kept = BackupRule.kept(all.keySet(), now);
        int removed = 0;
        for (Map.Entry<Instant, Path> each : all.entrySet()) {
            if (!kept.contains(each.getKey())) {
                BackupFolder.delete(each.getValue());
                removed++;
            }
        }
        return removed;
    }

    /**
     * A trial restore of the newest generation: every file of it and every photograph and paper that it names is read against
     * its digest, its ledger is opened from a copy and checked, and each revision is compared by its hash, and each record by
     * its text, with those of the archive. Changes nothing in the backup.
     *
     * @return what differs; empty where the archive, as it was at that backup, would come back
     */
    public List<Finding> trial(Archive archive, Progress progress) {
        BackupFolder backup = fit(archive);
        try {
            NavigableMap<Instant, Path> made = backup.generations();
            if (made.isEmpty()) {
                return List.of(new Finding(folder.toString(), Message.of("backup.none")));
            }
            Path bag = made.lastEntry().getValue();
            List<Finding> findings = new ArrayList<>(BagVerification.kept(bag, clock, progress));
            if (findings.isEmpty()) {
                Checked checked = BagCheck.run(bag, Progress.UNWATCHED);
                findings.addAll(BackupTrial.compare(checked, archive, clock, progress));
            }
            return findings;
        } catch (IOException e) {
            throw new PackRefused(folder.toString(), Message.of("backup.not-read", "why", e.toString()));
        }
    }
}
