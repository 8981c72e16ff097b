package tenterbook.network;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;

/**
 * The folder {@code network/} of an archive. Where the system has POSIX permissions only its owner can open it and its files; on
 * another system they are as private as the folder of the archive.
 */
public final class NetworkFolder {
    public static final String NAME = "network";

    private static final boolean POSIX =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

    private final Path folder;

    /** @param archive the archive's own folder */
    public NetworkFolder(Path archive) {
        this.folder = archive.resolve(NAME);
    }

    Optional<byte[]> read(String name) throws IOException {
        Path file = folder.resolve(name);
        return Files.exists(file) ? Optional.of(Files.readAllBytes(file)) : Optional.empty();
    }

    /** Replaces a file as a whole; it is on the disk before it gets its name. */
    void write(String name, byte[] bytes) throws IOException {
        Files.createDirectories(folder);
        if (POSIX) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        }
        // Java makes a temporary file readable by its owner alone where there are POSIX permissions.
        Path fresh = Files.createTempFile(folder, name, ".new");
        try {
            try (FileChannel channel = FileChannel.open(fresh, StandardOpenOption.WRITE)) {
                ByteBuffer left = ByteBuffer.wrap(bytes);
                while (left.hasRemaining()) {
                    channel.write(left);
                }
                channel.force(true);
            }
            Files.move(
                    fresh, folder.resolve(name), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }
}
