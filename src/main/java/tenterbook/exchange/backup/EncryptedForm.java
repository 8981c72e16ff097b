package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.function.Supplier;
import tenterbook.archive.Archive;
import tenterbook.exchange.Bag;
import tenterbook.exchange.BagVerification;
import tenterbook.exchange.PackRefused;
import tenterbook.exchange.ReadMe;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.exchange.kept.UnfinishedFolder;
import tenterbook.exchange.openpgp.BackupKey;
import tenterbook.exchange.openpgp.OpenedKey;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/** Backups that nobody can read without the passphrase; they are made without it. A generation is named by its list. */
record EncryptedForm(EncryptedFolder folder, BackupKey key, Clock clock) implements BackupForm {
    @Override
    public Path root() {
        return folder.root();
    }

    @Override
    public Path generation(Instant at) {
        return folder.list(at);
    }

    @Override
    public NavigableMap<Instant, Path> generations() throws IOException {
        return folder.generations();
    }

    @Override
    public LedgerEnd end(Path generation) {
        return GenerationList.read(generation)
                .orElseThrow(() -> new PackRefused(generation.toString(), Message.of("backup.encrypted.list-damaged")))
                .end();
    }

    /** The list first: without it the rest is taken for a leftover. */
    @Override
    public void delete(Path generation) throws IOException {
        Files.delete(generation);
        folder.clearLeftovers();
    }

    /** The plain bag of the ledger lies in the archive's own folder meanwhile, so that no text of it reaches another disk. */
    private static UnfinishedFolder workIn(Archive archive) throws IOException {
        return UnfinishedFolder.beside(
                archive.folder().root().toAbsolutePath().normalize().resolve("backup"));
    }

    @Override
    public Added add(Archive archive, Instant now, Progress progress) throws IOException {
        Path place = generation(now);
        prepare();
        EncryptedFiles files = new EncryptedFiles(folder, key);
        try (UnfinishedFolder work = workIn(archive)) {
            Bag bag = fill(work, archive, now, files, progress);
            Pace pace = new Pace(progress, bag.bytes());
            pace.begin(Message.of("backup.encrypted.encrypting"));
            files.store(work.whole(), EncryptedFolder.ledger(now), pace);
            files.needed().put(EncryptedFolder.KEY, sum(folder.root().resolve(EncryptedFolder.KEY)));
            progress.orStop();
            LedgerEnd end = new LedgerEnd(bag.lastSequence(), bag.lastHash().hex());
            write(place, new GenerationList(key.fingerprint(), end, files.needed()));
            Files.deleteIfExists(folder.soFar());
            return new Added(bag, files);
        }
    }

    private void prepare() throws IOException {
        Path copy = root().resolve(EncryptedFolder.KEY);
        try {
            folder.key();
        } catch (IOException e) {
            ArchiveKey.write(copy, key);
            folder.key();
        }
        Files.writeString(root().resolve("READ-ME-FIRST.txt"), ReadMe.ofEncryptedBackups());
        folder.clearLeftovers();
    }

    private static String sum(Path file) throws IOException {
        return Sums.of(file, List.of("sha256"), new Pace(Progress.UNWATCHED, 0))
                .hex()
                .get("sha256");
    }

    private static void write(Path place, GenerationList list) throws IOException {
        Path part = place.resolveSibling(place.getFileName() + ".part");
        Files.writeString(part, list.text());
        if (GenerationList.read(part).isEmpty()) {
            throw new ArchiveProblem(Message.of("backup.reads-otherwise", "file", place.getFileName()));
        }
        Files.move(part, place, StandardCopyOption.ATOMIC_MOVE);
    }

    @Override
    public void mustOpen(Supplier<Passphrase> passphrase) {
        key.open(passphrase.get());
    }

    @Override
    public List<Finding> trial(Path generation, Archive archive, Supplier<Passphrase> passphrase, Progress progress)
            throws IOException {
        GenerationList list = GenerationList.read(generation).orElse(null);
        if (list == null) {
            return List.of(new Finding(generation.toString(), Message.of("backup.encrypted.list-damaged")));
        }
        OpenedKey opened;
        try {
            // The copy beside the backup, since it is what is left where the archive is lost.
            opened = folder.key().open(passphrase.get());
        } catch (IOException e) {
            return List.of(new Finding(EncryptedFolder.KEY, Message.of("backup.encrypted.no-key")));
        }
        Decrypting decrypting = new Decrypting(folder, list, opened, progress);
        List<Finding> findings = new ArrayList<>(decrypting.compare());
        try (UnfinishedFolder work = workIn(archive)) {
            findings.addAll(decrypting.ledger(work.whole()));
            if (findings.isEmpty()) {
                findings.addAll(BagVerification.inBackup(
                        work.whole(),
                        GenerationList.shared(root(), list.sums()),
                        work.aside("read-back"),
                        clock,
                        progress));
            }
            if (findings.isEmpty()) {
                findings.addAll(
                        BackupTrial.compare(BagCheck.run(work.whole(), Progress.UNWATCHED), archive, clock, progress));
            }
        }
        return findings;
    }
}
