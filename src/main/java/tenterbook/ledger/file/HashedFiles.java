package tenterbook.ledger.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tenterbook.measure.Digest;

/**
 * A folder of files that are never changed, each under its own SHA-256: {@code ab/abcd….pdf}.
 *
 * <p>A file gets its final name only when it is whole, hashed and synced; then the folder is synced. A killed process leaves at
 * most a part file under {@code arriving}, which the next opening deletes, so only one running program may use the folder.
 * Process kill is tested; power loss depends on the disk honouring a sync. Thread-safe.
 */
public final class HashedFiles {
    /** Folder of files still being received. */
    public static final String ARRIVING = "arriving";

    private static final Pattern NAME = Pattern.compile("([0-9a-f]{64})(?:\\.[A-Za-z0-9]+)?");

    private final Path folder;
    private final Path arriving;

    public enum Check {
        GOOD,
        /** The bytes are no longer those that the name was made from. */
        CHANGED,
        MISSING
    }

    /** Opens or creates the folder and deletes part files of an interrupted program. */
    public HashedFiles(Path folder) throws IOException {
        this(folder, folder.resolve(ARRIVING));
    }

    /** @param arriving where files are received; on the same disk as {@code folder} if any is to be placed */
    public HashedFiles(Path folder, Path arriving) throws IOException {
        this.folder = folder;
        this.arriving = Files.createDirectories(arriving);
        try (DirectoryStream<Path> left = Files.newDirectoryStream(arriving, "*.part")) {
            for (Path part : left) {
                Files.deleteIfExists(part);
            }
        }
    }

    /** An unused path for a file being received; the next opening deletes what is left there. */
    public Path arriving() {
        return arriving.resolve(UUID.randomUUID() + ".part");
    }

    /** The path of a file of this digest, whether it exists or not. */
    public static Path path(Path folder, Digest digest, String extension) {
        return folder.resolve(digest.hex().substring(0, 2)).resolve(digest.hex() + "." + extension);
    }

    /**
     * Moves a whole and synced part file to its final name. An existing file that no longer matches its name is replaced.
     *
     * @return whether the same bytes were there already; then nothing is changed
     */
    public boolean place(Path part, Digest digest, String extension) throws IOException {
        Path target = path(folder, digest, extension);
        if (check(target, digest) == Check.GOOD) {
            return true;
        }
        Path home = target.getParent();
        if (!Files.isDirectory(home)) {
            Files.createDirectories(home);
            sync(folder);
        }
        Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
        sync(home);
        return false;
    }

    /**
     * Deletes each file whose name is a digest not among {@code kept}, and each part file; files of other names stay. Must not
     * run while anything is being stored.
     *
     * @return how many
     */
    public static int deleteAllBut(Path folder, Set<Digest> kept) throws IOException {
        if (!Files.isDirectory(folder)) {
            return 0;
        }
        List<Path> gone;
        try (Stream<Path> files = Files.walk(folder, 2)) {
            gone = files.filter(Files::isRegularFile)
                    .filter(file -> {
                        Matcher name = NAME.matcher(file.getFileName().toString());
                        return name.matches()
                                ? !kept.contains(new Digest(name.group(1)))
                                : file.getParent().equals(folder.resolve(ARRIVING));
                    })
                    .toList();
        }
        for (Path file : gone) {
            Files.delete(file);
            sync(file.getParent());
        }
        return gone.size();
    }

    /** Reads a file again and compares it with its name. */
    public static Check check(Path path, Digest digest) throws IOException {
        if (!Files.isRegularFile(path)) {
            return Check.MISSING;
        }
        MessageDigest hash = Digest.sha256();
        try (InputStream in = Files.newInputStream(path)) {
            byte[] buffer = new byte[1 << 16];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                hash.update(buffer, 0, read);
            }
        }
        return Digest.of(hash).equals(digest) ? Check.GOOD : Check.CHANGED;
    }

    /** Makes a rename durable. Windows cannot open a folder for this and keeps its own journal. */
    private static void sync(Path directory) throws IOException {
        if (System.getProperty("os.name").startsWith("Windows")) {
            return;
        }
        try (FileChannel channel = FileChannel.open(directory, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }
}
