package tenterbook.exchange;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import tenterbook.exchange.backup.ArchiveKey;
import tenterbook.exchange.openpgp.Passphrase;

/** One key for backups, made once in each process, since making one takes seconds. */
public final class SharedBackupKey {
    public static final String WORDS = "three herons über the weir";
    public static final String NAME = "backup-key.asc";

    private static byte[] text;

    private SharedBackupKey() {}

    public static Passphrase passphrase() {
        return Passphrase.of(WORDS);
    }

    /** Has the backups of an archive encrypted. */
    public static synchronized void giveTo(Path archive) {
        try {
            if (text == null) {
                ArchiveKey.choose(archive, Passphrase.chosen(WORDS, WORDS), Demo.CLOCK.instant());
                text = Files.readAllBytes(archive.resolve(NAME));
            } else {
                Files.write(archive.resolve(NAME), text);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("giving a key to " + archive, e);
        }
    }
}
