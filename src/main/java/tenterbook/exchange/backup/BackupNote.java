package tenterbook.exchange.backup;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Properties;
import org.slf4j.LoggerFactory;

/**
 * Where an archive's backups go and when the last good one was made: the file {@code backups.properties} in the archive's folder.
 * It is no part of the ledger, since the folder belongs to this computer, and a backup is also made by a command beside the
 * running program.
 *
 * @param folder empty where none was chosen
 * @param lastGood empty where none was made yet
 */
public record BackupNote(String folder, Optional<Instant> lastGood) {
    /** A last good backup that is older is worth a reminder. */
    public static final Duration OLD = Duration.ofDays(7);

    private static final String NAME = "backups.properties";

    /** A note that cannot be read is as none. */
    public static BackupNote in(Path archive) {
        Properties read = new Properties();
        try (Reader text = Files.newBufferedReader(archive.resolve(NAME))) {
            read.load(text);
            String last = read.getProperty("lastGood", "");
            return new BackupNote(
                    read.getProperty("folder", ""),
                    last.isEmpty() ? Optional.empty() : Optional.of(Instant.parse(last)));
        } catch (IOException | IllegalArgumentException | DateTimeException e) {
            return new BackupNote("", Optional.empty());
        }
    }

    /** Whether there is a last good backup that is no older than {@link #OLD}. */
    public boolean fresh(Instant now) {
        return lastGood.filter(at -> !at.isBefore(now.minus(OLD))).isPresent();
    }

    /** The same for another folder; what was made in the former one does not count for it. */
    public BackupNote to(String other) {
        return other.equals(folder) ? this : new BackupNote(other, Optional.empty());
    }

    /** The same folder without a good backup, as after backups became encrypted or no longer are. */
    public BackupNote anew() {
        return new BackupNote(folder, Optional.empty());
    }

    public BackupNote good(Instant at) {
        return new BackupNote(folder, Optional.of(at));
    }

    public void keep(Path archive) {
        Properties written = new Properties();
        written.setProperty("folder", folder);
        written.setProperty("lastGood", lastGood.map(Instant::toString).orElse(""));
        Path fresh = archive.resolve(NAME + ".new");
        try {
            StringWriter text = new StringWriter();
            written.store(text, null);
            Files.writeString(fresh, text.toString());
            Files.move(
                    fresh, archive.resolve(NAME), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            LoggerFactory.getLogger(BackupNote.class).warn("{} was not written", archive.resolve(NAME), e);
        }
    }
}
