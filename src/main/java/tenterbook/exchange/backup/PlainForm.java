package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.function.Supplier;
import tenterbook.archive.Archive;
import tenterbook.exchange.Bag;
import tenterbook.exchange.BagVerification;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.exchange.kept.BackupFiles;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.exchange.kept.UnfinishedFolder;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/** Backups that anybody can read who has the disk: a generation is a bag. */
record PlainForm(BackupFolder backup, Clock clock) implements BackupForm {
    @Override
    public Path root() {
        return backup.root();
    }

    @Override
    public Path generation(Instant at) {
        return backup.generation(at);
    }

    @Override
    public NavigableMap<Instant, Path> generations() throws IOException {
        return backup.generations();
    }

    @Override
    public LedgerEnd end(Path generation) throws IOException {
        String info = Files.readString(generation.resolve("bag-info.txt"));
        return new LedgerEnd(
                Long.parseLong(labelled(info, "Tenterbook-Last-Sequence", "0")),
                labelled(info, "Tenterbook-Last-Hash", ""));
    }

    private static String labelled(String info, String label, String otherwise) {
        return info.lines()
                .filter(line -> line.startsWith(label + ": "))
                .map(line -> line.substring(label.length() + 2).strip())
                .findFirst()
                .orElse(otherwise);
    }

    @Override
    public void delete(Path generation) throws IOException {
        BackupFolder.delete(generation);
    }

    @Override
    public Added add(Archive archive, Instant now, Progress progress) throws IOException {
        Files.writeString(
                root().resolve("READ-ME-FIRST.txt"),
                Message.of("backup.read-me").inEnglish() + "\n");
        BackupFiles files = new BackupFiles(root());
        // One name for all, so that what a killed backup left is cleared by the next.
        try (UnfinishedFolder unfinished =
                UnfinishedFolder.beside(backup.ledgers().resolve("new"))) {
            Bag bag = fill(unfinished, archive, now, files, progress);
            progress.orStop();
            unfinished.moveTo(generation(now));
            return new Added(bag, files);
        }
    }

    @Override
    public void mustOpen(Supplier<Passphrase> passphrase) {}

    @Override
    public List<Finding> trial(Path bag, Archive archive, Supplier<Passphrase> passphrase, Progress progress)
            throws IOException {
        List<Finding> findings = new ArrayList<>(BagVerification.kept(bag, clock, progress));
        if (findings.isEmpty()) {
            findings.addAll(BackupTrial.compare(BagCheck.run(bag, Progress.UNWATCHED), archive, clock, progress));
        }
        return findings;
    }
}
