package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import tenterbook.exchange.BagRefused;
import tenterbook.exchange.Restore;
import tenterbook.exchange.Restored;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.exchange.kept.UnfinishedFolder;
import tenterbook.exchange.openpgp.BackupKey;
import tenterbook.exchange.openpgp.OpenedKey;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Brings an archive back from an encrypted backup: opens it into an unfinished folder beside the place of the archive, and restores
 * from there. Backups of the archive that came back are encrypted for the same key.
 */
public final class EncryptedRestore {
    private final Clock clock;

    public EncryptedRestore(Clock clock) {
        this.clock = clock;
    }

    /**
     * As {@link Restore#restore}.
     *
     * @param passphrase asked for once the place of the archive is known to fit
     * @throws Refusal where the passphrase is another; nothing was changed
     */
    public Restored restore(
            EncryptedFolder.Generation generation,
            Path archiveDir,
            Supplier<Passphrase> passphrase,
            Progress progress) {
        EncryptedFolder folder = generation.folder();
        Path place = archiveDir.toAbsolutePath().normalize();
        try {
            Restore.mustFit(folder.root(), place);
            GenerationList list = GenerationList.read(generation.list())
                    .orElseThrow(() ->
                            new BagRefused(generation.list().toString(), Message.of("backup.encrypted.list-damaged")));
            BackupKey key = key(folder);
            OpenedKey opened = key.open(passphrase.get());
            Decrypting decrypting = new Decrypting(folder, list, opened, progress);
            mustHaveRoom(place, decrypting.bytes());
            try (UnfinishedFolder work =
                    UnfinishedFolder.beside(place.resolveSibling(place.getFileName() + "-decrypted"))) {
                Path bag = new BackupFolder(work.whole()).generation(generation.at());
                Files.createDirectories(bag);
                List<Finding> findings = new ArrayList<>(decrypting.files(work.whole()));
                findings.addAll(decrypting.ledger(bag));
                if (!findings.isEmpty()) {
                    throw new BagRefused(findings);
                }
                Restored restored = new Restore(clock).restore(bag, place, progress);
                return restored.noting(keyKept(place, key));
            }
        } catch (IOException e) {
            throw new BagRefused(folder.root().toString(), Message.of("exchange.restore.failed", "why", e.toString()));
        } catch (ArchiveProblem e) {
            throw new BagRefused(place.toString(), e.explanation());
        }
    }

    private static BackupKey key(EncryptedFolder folder) {
        try {
            return folder.key();
        } catch (IOException e) {
            throw new BagRefused(
                    folder.root().resolve(EncryptedFolder.KEY).toString(), Message.of("backup.encrypted.no-key"));
        }
    }

    private static Finding keyKept(Path place, BackupKey key) {
        String file = place.resolve(ArchiveKey.NAME).toString();
        try {
            ArchiveKey.keep(place, key);
            return new Finding(file, Message.of("backup.encrypted.key-kept"));
        } catch (IOException e) {
            return new Finding(file, Message.of("backup.encrypted.key-not-kept", "why", e.toString()));
        }
    }

    /** The opened files and the archive itself lie beside each other for a while. */
    private static void mustHaveRoom(Path place, long bytes) throws IOException {
        long free = Files.getFileStore(place.getParent()).getUsableSpace();
        if (2 * bytes > free) {
            throw new BagRefused(
                    place.toString(), Message.of("exchange.restore.no-room", "needed", 2 * bytes, "free", free));
        }
    }
}
