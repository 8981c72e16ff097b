package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.UUID;
import tenterbook.exchange.openpgp.BackupKey;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.words.Refusal;

/**
 * Whether an archive's backups are encrypted, and for which key: the file {@code backup-key.asc} in its folder. It is no part of the
 * ledger, is in no bag, and each encrypted backup has a copy of it. Without the passphrase it opens nothing.
 */
public final class ArchiveKey {
    static final String NAME = "backup-key.asc";

    private ArchiveKey() {}

    public static boolean in(Path archive) {
        return Files.exists(archive.resolve(NAME));
    }

    /** @throws IOException if it cannot be read or is damaged */
    static BackupKey read(Path archive) throws IOException {
        return BackupKey.read(archive.resolve(NAME));
    }

    /**
     * Has the next backups encrypted for a new key.
     *
     * @throws Refusal where they are encrypted already
     */
    public static void choose(Path archive, Passphrase passphrase, Instant now) throws IOException {
        if (in(archive)) {
            throw Refusal.of("backup.encrypted.already");
        }
        keep(archive, BackupKey.make(passphrase, now));
        BackupNote.in(archive).anew().keep(archive);
    }

    /** For its owner alone, where the disk knows owners. */
    static void keep(Path archive, BackupKey key) throws IOException {
        Path file = archive.resolve(NAME);
        write(file, key);
        if (Files.getFileStore(file).supportsFileAttributeView("posix")) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        }
    }

    /** For whoever may read the folder: an heir is another user of another computer. */
    static void write(Path file, BackupKey key) throws IOException {
        Path part = file.resolveSibling(file.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            Files.write(part, key.text());
            Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /**
     * Has the next backups not encrypted. The key stays in the folder under another name, as a spare for the encrypted backups that
     * were made.
     */
    public static void putAside(Path archive) throws IOException {
        for (int i = 1; in(archive); i++) {
            Path former = archive.resolve("backup-key-former-%d.asc".formatted(i));
            if (!Files.exists(former)) {
                Files.move(archive.resolve(NAME), former, StandardCopyOption.ATOMIC_MOVE);
            }
        }
        BackupNote.in(archive).anew().keep(archive);
    }
}
