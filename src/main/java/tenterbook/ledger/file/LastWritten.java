package tenterbook.ledger.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.function.LongFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import tenterbook.measure.Digest;
import tenterbook.words.Joined;
import tenterbook.words.Message;

/**
 * How far the ledger was written in this folder: sequence and hash of its last revision, in the file {@code last-written} beside
 * it. A ledger that ends earlier, or has another revision at that place, is an older or another file, as a program that keeps
 * folders in step between computers may put there.
 *
 * <p>Written after each act, without syncing: where the computer stops in between, the note is older than the ledger, which
 * is no fault, or is not readable, which is as if there were none. Thread-safe.
 */
public final class LastWritten {
    static final String NAME = "last-written";

    private static final Pattern FORM = Pattern.compile("(\\d{1,18}) ([0-9a-f]{64})\\s*");

    private record End(long sequence, Digest hash) {}

    private final Path file;
    private final boolean readOnly;
    private @Nullable End seen;
    private @Nullable Finding behind;

    private LastWritten(Path file, boolean readOnly) {
        this.file = file;
        this.readOnly = readOnly;
        this.seen = read(file);
    }

    /** @param hashes the hash of each revision of the opened ledger by sequence; empty beyond its end */
    public static LastWritten of(ArchiveFolder folder, LongFunction<Optional<Digest>> hashes) {
        LastWritten written = new LastWritten(folder.lastWritten(), folder.readOnly());
        written.compare(hashes);
        return written;
    }

    private void compare(LongFunction<Optional<Digest>> hashes) {
        End end = seen;
        if (end == null || end.sequence() == 0) {
            return;
        }
        Optional<Digest> found;
        try {
            found = hashes.apply(end.sequence());
        } catch (RuntimeException e) {
            // The check of the ledger itself says what cannot be read.
            LoggerFactory.getLogger(LastWritten.class).info("Revision {} cannot be compared", end.sequence(), e);
            return;
        }
        if (found.isEmpty() || !found.get().equals(end.hash())) {
            behind = new Finding(
                    Joined.with("", "ledger.db"),
                    Message.of(
                            "ledger.check.behind",
                            "sequence",
                            end.sequence(),
                            "hash",
                            end.hash().brief(),
                            "found",
                            found.isEmpty() ? "missing" : "other"),
                    Consequence.BEHIND);
        }
    }

    private static @Nullable End read(Path file) {
        try {
            Matcher form = FORM.matcher(Files.exists(file) ? Files.readString(file) : "");
            return form.matches() ? new End(Long.parseLong(form.group(1)), new Digest(form.group(2))) : null;
        } catch (IOException e) {
            LoggerFactory.getLogger(LastWritten.class).info("{} cannot be read", file, e);
            return null;
        }
    }

    public synchronized Optional<Finding> behind() {
        return Optional.ofNullable(behind);
    }

    public synchronized boolean known() {
        return seen != null;
    }

    /** Notes a later end. While the ledger is behind the note stays, so that every start says so. */
    public synchronized void note(long sequence, Digest hash) {
        if (behind == null && (seen == null || sequence > seen.sequence())) {
            write(new End(sequence, hash));
        }
    }

    /** Notes this end, whatever was noted before. */
    public synchronized void accept(long sequence, Digest hash) {
        behind = null;
        write(new End(sequence, hash));
    }

    private void write(End end) {
        if (readOnly) {
            return;
        }
        seen = end;
        Path fresh = file.resolveSibling(NAME + ".new");
        try {
            Files.writeString(fresh, end.sequence() + " " + end.hash().hex() + "\n");
            Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            // What was saved is saved; only this note is older.
            LoggerFactory.getLogger(LastWritten.class).warn("{} was not written", file, e);
        }
    }
}
