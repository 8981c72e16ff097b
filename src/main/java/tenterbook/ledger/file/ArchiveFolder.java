package tenterbook.ledger.file;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * One archive folder, held by one process at a time.
 *
 * @see <a href="../../../../../../DEVELOPERS.md">DEVELOPERS.md, "One archive folder"</a>
 */
public final class ArchiveFolder implements AutoCloseable {
    private static final String LOCK = "in-use.lock";
    private static final List<String> DERIVED = List.of("index", "derived");

    private final Path root;
    private final @Nullable FileLock lock;
    private final @Nullable LedgerCopy copy;
    private boolean lookedThrough;
    private boolean madeOfAnother;
    /** Of the lock file that is held, where the system has such keys; its file stays open, so no other can get the same. */
    private final @Nullable Object lockKey;

    private ArchiveFolder(Path root, @Nullable FileLock lock, @Nullable LedgerCopy copy) {
        this.root = root;
        this.lock = lock;
        this.copy = copy;
        this.lockKey = lock == null ? null : key(root);
    }

    /**
     * Opens the folder, creating it where it is missing, and locks it until {@link #close}.
     *
     * @throws ArchiveInUse if another process holds it
     * @throws ArchiveProblem if it cannot be written
     */
    public static ArchiveFolder hold(Path root) {
        try {
            Files.createDirectories(root);
            FileChannel channel =
                    FileChannel.open(root.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            return new ArchiveFolder(root, lockOf(root, channel, false), null);
        } catch (IOException e) {
            throw new ArchiveProblem(
                    Message.of("ledger.folder-not-written", "folder", root.toAbsolutePath(), "why", Explained.of(e)),
                    e);
        }
    }

    /** As {@link #hold}, of a folder just made of a bag or another archive, which stays as it is. */
    public static ArchiveFolder holdMade(Path root) {
        ArchiveFolder folder = hold(root);
        folder.madeOfAnother = true;
        return folder;
    }

    /** Whether its ledger still lies elsewhere as it was. */
    public boolean madeOfAnother() {
        return madeOfAnother;
    }

    /**
     * Opens the folder for reading, without changing anything in it: its ledger is a copy elsewhere, since SQLite reads neither
     * a write-ahead log nor a ledger of an older program without writing. Where there is a lock file it is locked shared, so
     * that no other process writes meanwhile.
     *
     * @throws ArchiveProblem if another process holds it, or it cannot be read
     */
    public static ArchiveFolder look(Path root) {
        try {
            Path file = root.resolve(LOCK);
            FileLock lock =
                    Files.isReadable(file) ? lockOf(root, FileChannel.open(file, StandardOpenOption.READ), true) : null;
            return new ArchiveFolder(root, lock, LedgerCopy.of(root.resolve("ledger.db")));
        } catch (IOException e) {
            throw new ArchiveProblem(
                    Message.of("ledger.folder-not-read", "folder", root.toAbsolutePath(), "why", Explained.of(e)), e);
        }
    }

    /** As {@link #look}, with copies of what is derived: nothing of it need be made anew, and it may be brought up to date. */
    public static ArchiveFolder lookThrough(Path root) {
        ArchiveFolder folder = look(root);
        try {
            for (String name : DERIVED) {
                Objects.requireNonNull(folder.copy).addDerived(root.resolve(name));
            }
            folder.lookedThrough = true;
            return folder;
        } catch (IOException e) {
            folder.close();
            throw new ArchiveProblem(
                    Message.of("ledger.folder-not-read", "folder", root.toAbsolutePath(), "why", Explained.of(e)), e);
        }
    }

    /**
     * Opens the folder for reading beside a program that may have it open: its ledger is a copy elsewhere that SQLite makes of
     * one moment.
     *
     * @throws ArchiveProblem if it cannot be read
     */
    public static ArchiveFolder beside(Path root) {
        try {
            return new ArchiveFolder(root, null, LedgerCopy.ofMoment(root.resolve("ledger.db")));
        } catch (IOException | SQLException e) {
            throw new ArchiveProblem(
                    Message.of("ledger.folder-not-read", "folder", root.toAbsolutePath(), "why", Explained.of(e)), e);
        }
    }

    /** Where it is noted how far the ledger was written; of a copied ledger, as it was before the copy was made. */
    Path lastWritten() {
        Path copied = copy == null ? root : copy.file().getParent();
        return (Files.exists(copied.resolve(LastWritten.NAME)) ? copied : root).resolve(LastWritten.NAME);
    }

    private static FileLock lockOf(Path root, FileChannel channel, boolean shared) throws IOException {
        FileLock lock = null;
        try {
            lock = channel.tryLock(0, Long.MAX_VALUE, shared);
        } catch (OverlappingFileLockException e) {
            // Held by this process.
        }
        if (lock == null) {
            channel.close();
            throw new ArchiveInUse(root);
        }
        return lock;
    }

    private static @Nullable Object key(Path root) {
        try {
            return Files.readAttributes(root.resolve(LOCK), BasicFileAttributes.class)
                    .fileKey();
        } catch (IOException e) {
            return null;
        }
    }

    /**
     * To be asked before each write: without its lock file another program could take the folder for free and write too.
     *
     * @throws ArchiveProblem where the lock file was deleted or replaced since it was locked; not on a system without file keys
     */
    public void mustStillBeHeld() {
        if (lockKey != null && !lockKey.equals(key(root))) {
            throw new ArchiveProblem(Message.of("ledger.lock-lost", "folder", root.toAbsolutePath()));
        }
    }

    /** Whether nothing may be written into it, see {@link #look}. */
    public boolean readOnly() {
        return copy != null;
    }

    /** Whether there is a place for what is derived from the ledger; else it is kept in memory. */
    public boolean derivedKept() {
        return copy == null || lookedThrough;
    }

    public Path root() {
        return root;
    }

    public Path ledger() {
        return copy == null ? root.resolve("ledger.db") : copy.file();
    }

    public Path photos() {
        return root.resolve("photos");
    }

    public Path papers() {
        return root.resolve("papers");
    }

    /** Where photographs lie while they arrive. */
    public Path arriving() {
        return copy == null
                ? photos().resolve(HashedFiles.ARRIVING)
                : copy.folder().resolve(HashedFiles.ARRIVING);
    }

    /** Previews that were made before; where nothing may be written, new ones go to {@link #previews}. */
    public Path earlierPreviews() {
        return root.resolve("previews");
    }

    public Path previews() {
        return mayBeWritten("previews");
    }

    public Path index() {
        return mayBeWritten("index");
    }

    /** Tables derived from the ledger; each file may be deleted and is rebuilt. */
    public Path derived() {
        return mayBeWritten("derived");
    }

    private Path mayBeWritten(String name) {
        return (copy == null ? root : copy.folder()).resolve(name);
    }

    @Override
    public void close() {
        try {
            if (lock != null) {
                lock.acquiredBy().close();
            }
            if (copy != null) {
                copy.close();
            }
        } catch (IOException e) {
            throw new ArchiveProblem(Message.of("ledger.not-let-go", "folder", root), e);
        }
    }
}
