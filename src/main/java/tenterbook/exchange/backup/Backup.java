package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
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
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Backups of an archive in a folder on another disk, while the program runs: a bag of the ledger for each, and only those
 * photographs and papers that are not there yet. Each is read back before it gets its name. They are encrypted where the archive has
 * a key for that ({@link ArchiveKey}).
 */
public final class Backup {
    /** Of the generations, the last one made. */
    public static final String NEWEST = "newest";

    public static final String ALL = "all";

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

    /** As {@link #trial(Archive, String, Supplier, Progress)} of the newest generation. */
    public List<Finding> trial(Archive archive, Supplier<Passphrase> passphrase, Progress progress) {
        return trial(archive, NEWEST, passphrase, progress).findings();
    }

    /**
     * What a trial restore found.
     *
     * @param generations names of those that were read, oldest first
     * @param findings what differs; empty where the archive, as it was at each of those backups, would come back
     */
    public record Tried(List<String> generations, List<Finding> findings) {
        public Tried {
            generations = List.copyOf(generations);
            findings = List.copyOf(findings);
        }

        /** One sentence. */
        public Message summary() {
            return Message.of(
                    findings.isEmpty() ? "backup.trial-good" : "backup.trial-bad",
                    "tried",
                    generations.size(),
                    "names",
                    String.join(", ", generations),
                    "count",
                    findings.size());
        }
    }

    /**
     * A trial restore of generations: every file of each and every photograph and paper that it names is read against
     * its digest, its ledger is opened from a copy and checked, and each revision is compared by its hash, and each record by
     * its text, with those of the archive. Changes nothing in the backup.
     *
     * @param which {@link #NEWEST}, {@link #ALL}, or the beginning of the names of those that are meant, as in '2026-11'
     * @param passphrase asked for where the backup is encrypted
     * @throws Refusal where the passphrase is another, or no generation has such a name
     */
    public Tried trial(Archive archive, String which, Supplier<Passphrase> passphrase, Progress progress) {
        BackupForm backup = form(archive);
        try {
            NavigableMap<Instant, Path> made = backup.generations();
            if (made.isEmpty()) {
                return new Tried(List.of(), List.of(new Finding(folder.toString(), Message.of("backup.none"))));
            }
            List<Instant> meant = meant(made.navigableKeySet(), which);
            List<Finding> findings = new ArrayList<>();
            for (Instant at : meant) {
                String name = BackupFolder.name(at);
                for (Finding each : backup.trial(made.get(at), archive, passphrase, progress)) {
                    findings.add(
                            which.equalsIgnoreCase(NEWEST)
                                    ? each
                                    : new Finding(
                                            Joined.with(", ", name, each.place()), each.problem(), each.consequence()));
                }
            }
            return new Tried(meant.stream().map(BackupFolder::name).toList(), findings);
        } catch (IOException e) {
            throw new PackRefused(folder.toString(), Message.of("backup.not-read", "why", e.toString()));
        }
    }

    /**
     * What is asked for of a trial after the next backup, judged before that is made and an older ledger deleted.
     *
     * @param which as of a trial; the backup that is made now counts
     * @param fresh whether a key is chosen first, so that no other backup will be beside it
     * @throws Refusal where no backup has such a name, or the passphrase is another
     */
    public void mustBeTriable(Archive archive, String which, boolean fresh, Supplier<Passphrase> passphrase) {
        BackupForm backup = form(archive);
        try {
            NavigableSet<Instant> made =
                    new TreeSet<>(fresh ? Set.of() : backup.generations().keySet());
            made.add(clock.instant().truncatedTo(ChronoUnit.SECONDS));
            meant(made, which);
        } catch (IOException e) {
            throw new PackRefused(folder.toString(), Message.of("backup.not-read", "why", e.toString()));
        }
        if (!fresh) {
            backup.mustOpen(passphrase);
        }
    }

    private static List<Instant> meant(NavigableSet<Instant> made, String which) {
        if (which.equalsIgnoreCase(NEWEST)) {
            return List.of(made.last());
        }
        List<Instant> meant = made.stream()
                .filter(at ->
                        which.equalsIgnoreCase(ALL) || BackupFolder.name(at).startsWith(which))
                .toList();
        if (which.isEmpty() || meant.isEmpty()) {
            throw Refusal.of(
                    "backup.no-generation",
                    "found",
                    which,
                    "there",
                    made.stream().map(BackupFolder::name).collect(Collectors.joining(", ")));
        }
        return meant;
    }
}
