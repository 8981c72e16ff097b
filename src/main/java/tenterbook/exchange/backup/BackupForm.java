package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.function.Supplier;
import tenterbook.archive.Archive;
import tenterbook.exchange.Bag;
import tenterbook.exchange.BagFilling;
import tenterbook.exchange.BagVerification;
import tenterbook.exchange.DamageAdvice;
import tenterbook.exchange.PackRefused;
import tenterbook.exchange.kept.SharedFiles;
import tenterbook.exchange.kept.UnfinishedFolder;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/** How the backups of one archive lie on a disk: photographs and papers once for all, and a generation of the ledger for each. */
sealed interface BackupForm permits PlainForm, EncryptedForm {
    Path root();

    /** Where the generation of that moment is or will be. */
    Path generation(Instant at);

    /** The generations that are whole, by the moment of each. */
    NavigableMap<Instant, Path> generations() throws IOException;

    LedgerEnd end(Path generation) throws IOException;

    void delete(Path generation) throws IOException;

    /**
     * Adds what is new and a generation of the ledger; it has its name only once it is whole and was read back.
     *
     * @throws PackRefused if it would not come back; it has no name then
     */
    Added add(Archive archive, Instant now, Progress progress) throws IOException;

    Clock clock();

    /**
     * Fills a folder with the bag of a generation and reads it back.
     *
     * @throws PackRefused if it would not come back
     */
    default Bag fill(UnfinishedFolder work, Archive archive, Instant now, SharedFiles files, Progress progress)
            throws IOException {
        LocalDate today = LocalDate.ofInstant(now, ZoneOffset.UTC);
        Bag bag = new BagFilling(archive, work.whole(), generation(now), today, progress, new ArrayList<>(), files)
                .fill(DamageAdvice.NOTED, work.cleared());
        List<Finding> wrong = new ArrayList<>(
                BagVerification.inBackup(work.whole(), files.there(), work.aside("read-back"), clock(), progress));
        wrong.removeAll(bag.damage());
        if (!wrong.isEmpty()) {
            throw new PackRefused(wrong, Message.of("exchange.pack.not-restorable"));
        }
        return bag;
    }

    /** @throws tenterbook.words.Refusal where the backups are encrypted and it is not their passphrase */
    void mustOpen(Supplier<Passphrase> passphrase);

    /** What differs between the archive and a generation of it, which is read to its last byte. */
    List<Finding> trial(Path generation, Archive archive, Supplier<Passphrase> passphrase, Progress progress)
            throws IOException;

    /** Sequence and hash of the last revision; 0 for a ledger without any. */
    record LedgerEnd(long sequence, String hash) {}

    record Added(Bag bag, SharedFiles files) {}
}
