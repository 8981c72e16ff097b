package tenterbook.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * One archive folder, held by one process at a time.
 *
 * @see <a href="../../../../../../DEVELOPERS.md">DEVELOPERS.md, "One archive folder"</a>
 */
public final class ArchiveFolder implements AutoCloseable {
    private final Path root;
    private final FileChannel channel;
    private final FileLock lock;

    private ArchiveFolder(Path root, FileChannel channel, FileLock lock) {
        this.root = root;
        this.channel = channel;
        this.lock = lock;
    }

    /**
     * Opens the folder, making it where it is missing, and holds it until {@link #close}.
     *
     * @throws ArchiveProblem if another process holds it, or it cannot be written
     */
    public static ArchiveFolder hold(Path root) {
        FileChannel channel = null;
        try {
            Files.createDirectories(root);
            channel =
                    FileChannel.open(root.resolve("in-use.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = lockOf(channel);
            if (lock == null) {
                channel.close();
                throw new ArchiveProblem(Message.of("ledger.in-use", "folder", root.toAbsolutePath()));
            }
            return new ArchiveFolder(root, channel, lock);
        } catch (IOException e) {
            throw new ArchiveProblem(
                    Message.of("ledger.folder-not-written", "folder", root.toAbsolutePath(), "why", Explained.of(e)),
                    e);
        }
    }

    private static @Nullable FileLock lockOf(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    public Path root() {
        return root;
    }

    public Path ledger() {
        return root.resolve("ledger.db");
    }

    public Path photos() {
        return root.resolve("photos");
    }

    public Path papers() {
        return root.resolve("papers");
    }

    public Path previews() {
        return root.resolve("previews");
    }

    public Path index() {
        return root.resolve("index");
    }

    /** Tables made from the ledger; each file in it may be deleted and is made anew. */
    public Path derived() {
        return root.resolve("derived");
    }

    @Override
    public void close() {
        try {
            lock.release();
            channel.close();
        } catch (IOException e) {
            throw new ArchiveProblem(Message.of("ledger.not-let-go", "folder", root), e);
        }
    }
}
