package tenterbook.exchange.kept;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.words.Message;

/**
 * A folder being filled beside its final place, so that one rename puts it there whole.
 *
 * <p>What a killed process left is recognised by its name and by not being locked, and is deleted the next time something is
 * made for the same place.
 */
public final class UnfinishedFolder implements AutoCloseable {
    private final Path around;
    private final ArchiveFolder held;
    private final Path whole;

    private final List<Finding> cleared;

    private UnfinishedFolder(Path around, List<Finding> cleared) throws IOException {
        this.around = around;
        this.cleared = cleared;
        this.held = ArchiveFolder.hold(around);
        this.whole = Files.createDirectory(around.resolve("whole"));
    }

    /** @param target absolute; its parent must exist */
    public static UnfinishedFolder beside(Path target) throws IOException {
        String start = ".%s.unfinished-".formatted(target.getFileName());
        List<Finding> cleared = clearLeftovers(target.getParent(), start);
        return new UnfinishedFolder(target.resolveSibling(start + UUID.randomUUID()), cleared);
    }

    private static List<Finding> clearLeftovers(Path parent, String start) throws IOException {
        List<Finding> cleared = new ArrayList<>();
        try (DirectoryStream<Path> left = Files.newDirectoryStream(
                parent, path -> path.getFileName().toString().startsWith(start))) {
            for (Path leftover : left) {
                try {
                    ArchiveFolder.hold(leftover).close();
                    deleteAll(leftover);
                    cleared.add(new Finding(leftover.toString(), Message.of("exchange.cleared-leftover")));
                } catch (ArchiveProblem e) {
                    // Another process is at work on the same target; whichever finishes first gets the name.
                    org.slf4j.LoggerFactory.getLogger(UnfinishedFolder.class).info("Left {} alone: in use", leftover);
                }
            }
        }
        return cleared;
    }

    /** What killed processes had left for the same target; all of it was deleted. */
    public List<Finding> cleared() {
        return cleared;
    }

    /** The empty folder to fill. */
    public Path whole() {
        return whole;
    }

    /** A path beside it for temporary files; deleted with the rest. */
    public Path aside(String name) {
        return around.resolve(name);
    }

    /** Gives the filled folder its name. Replaces an empty folder of that name, or what a killed first start left. */
    public void moveTo(Path target) throws IOException {
        syncFolders(whole);
        if (Files.isDirectory(target, LinkOption.NOFOLLOW_LINKS)) {
            makeWay(target);
        }
        Files.move(whole, target, StandardCopyOption.ATOMIC_MOVE);
        sync(target.getParent());
    }

    private static void makeWay(Path target) throws IOException {
        LedgerFile there = LedgerFile.in(target);
        try (ArchiveFolder mine = ArchiveFolder.hold(target)) {
            if (!there.folderUnused()) {
                throw new DirectoryNotEmptyException(mine.root().toString());
            }
        }
        there.clearUnused();
        Files.delete(target);
    }

    @Override
    public void close() {
        held.close();
        try {
            deleteAll(around);
        } catch (IOException e) {
            // What was made already has its name, or the reason it has not is on its way; the rest goes next time.
            org.slf4j.LoggerFactory.getLogger(UnfinishedFolder.class).warn("Could not clear {}", around, e);
        }
    }

    private static void deleteAll(Path root) throws IOException {
        Files.walkFileTree(root, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path folder, IOException e) throws IOException {
                Files.delete(folder);
                return FileVisitResult.CONTINUE;
            }
        });
    }

    private static void syncFolders(Path root) throws IOException {
        try (var folders = Files.walk(root)) {
            for (Path folder : folders.filter(Files::isDirectory).toList()) {
                sync(folder);
            }
        }
    }

    /** Makes names durable. Windows cannot open a folder for this and keeps its own journal. */
    private static void sync(Path folder) throws IOException {
        if (System.getProperty("os.name").startsWith("Windows")) {
            return;
        }
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }
}
