package tenterbook.photo;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/**
 * The originals, each under its own SHA-256: {@code photos/ab/abcd….jpg}. The extension follows the bytes.
 *
 * <p>A file takes its final name only when it is whole, hashed and synced; the folder is synced after that. A killed
 * process leaves at most a part file under {@code arriving}, which the next opening clears, so one running program owns
 * the folder. Process kill is tested; power loss depends on the disk honouring a sync. Safe for use from many threads.
 */
public final class Originals {
    /** The usual limit on one photograph. */
    public static final long LIMIT_BYTES = 50L << 20;

    private static final Pattern NAME = Pattern.compile("([0-9a-f]{64})\\.[a-z]+");

    private final Path folder;
    private final Path arriving;

    /** What re-reading an original found. */
    public enum Check {
        GOOD,
        /** The bytes are no longer those that the name was made from. */
        CHANGED,
        MISSING
    }

    /** Opens or creates the folder and clears what an interrupted arrival left behind. */
    public Originals(Path photosDir) throws IOException {
        folder = photosDir;
        arriving = Files.createDirectories(photosDir.resolve("arriving"));
        try (DirectoryStream<Path> left = Files.newDirectoryStream(arriving, "*.part")) {
            for (Path part : left) {
                Files.deleteIfExists(part);
            }
        }
    }

    /** A name for bytes on their way in, not there yet; what is left under such names is cleared at the next opening. */
    public Path arriving() {
        return arriving.resolve(UUID.randomUUID() + ".part");
    }

    /**
     * Takes a photograph in. The same bytes a second time change nothing; a kept file that no longer matches its name is
     * replaced by the good bytes.
     *
     * @param limitBytes a longer stream is refused; see {@link #LIMIT_BYTES}
     * @throws PhotoRefused if it is empty, too large, broken off or no picture; nothing is kept
     * @throws IOException if the stream or the disk fails; nothing is kept
     */
    public Stored store(InputStream bytes, long limitBytes) throws IOException {
        Path part = arriving();
        try {
            Arrived arrived = receive(bytes, part, limitBytes);
            MediaType type = kindOf(part, arrived);
            Path target = folderOf(arrived.digest).resolve(arrived.digest.hex() + "." + type.extension());
            boolean alreadyThere = check(target, arrived.digest) == Check.GOOD;
            if (!alreadyThere) {
                place(part, target);
            }
            return new Stored(arrived.digest, target, arrived.size, type, alreadyThere);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** Where an original lies; empty if it is not kept here. */
    public Optional<Path> find(Digest digest) {
        return Stream.of(MediaType.values())
                .map(type -> folderOf(digest).resolve(digest.hex() + "." + type.extension()))
                .filter(Files::isRegularFile)
                .findFirst();
    }

    /** Every original's name, in order; the list is taken at the call. */
    public Stream<Digest> all() throws IOException {
        List<Digest> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(folder, 2)) {
            files.filter(Files::isRegularFile).forEach(file -> {
                Matcher name = NAME.matcher(file.getFileName().toString());
                if (name.matches()) {
                    found.add(new Digest(name.group(1)));
                }
            });
        }
        return found.stream().sorted();
    }

    /** Reads an original again and compares it with its name. */
    public Check verify(Digest digest) throws IOException {
        Optional<Path> path = find(digest);
        return path.isEmpty() ? Check.MISSING : check(path.get(), digest);
    }

    private record Arrived(Digest digest, long size, byte[] head) {}

    private static Arrived receive(InputStream bytes, Path part, long limitBytes) throws IOException {
        MessageDigest hash = Digest.sha256();
        byte[] buffer = new byte[1 << 16];
        byte[] head = new byte[0];
        long size = 0;
        try (FileChannel out = FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            for (int read = bytes.readNBytes(buffer, 0, buffer.length);
                    read > 0;
                    read = bytes.readNBytes(buffer, 0, buffer.length)) {
                if (size == 0) {
                    head = Arrays.copyOf(buffer, Math.min(read, MediaType.HEAD));
                }
                size += read;
                if (size > limitBytes) {
                    throw PhotoRefused.of("photo.too-large", "limit", megabytes(limitBytes));
                }
                hash.update(buffer, 0, read);
                ByteBuffer chunk = ByteBuffer.wrap(buffer, 0, read);
                while (chunk.hasRemaining()) {
                    out.write(chunk);
                }
            }
            out.force(true);
        }
        return new Arrived(Digest.of(hash), size, head);
    }

    private static MediaType kindOf(Path part, Arrived arrived) throws IOException {
        if (arrived.size == 0) {
            throw PhotoRefused.of("photo.empty");
        }
        MediaType type = MediaType.of(arrived.head).orElseThrow(() -> PhotoRefused.of("photo.another-kind"));
        Optional<Message> fault = Wholeness.fault(part, type);
        if (fault.isPresent()) {
            throw PhotoRefused.of("photo.not-whole", "fault", fault.get());
        }
        return type;
    }

    private void place(Path part, Path target) throws IOException {
        Path home = target.getParent();
        if (!Files.isDirectory(home)) {
            Files.createDirectories(home);
            sync(folder);
        }
        Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
        sync(home);
    }

    private static Check check(Path path, Digest digest) throws IOException {
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

    private Path folderOf(Digest digest) {
        return folder.resolve(digest.hex().substring(0, 2));
    }

    /** Makes a rename last. Windows cannot open a folder for this and keeps its own journal. */
    private static void sync(Path directory) throws IOException {
        if (System.getProperty("os.name").startsWith("Windows")) {
            return;
        }
        try (FileChannel channel = FileChannel.open(directory, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    private static Message megabytes(long bytes) {
        return bytes >= 1 << 20
                ? Message.of("photo.megabytes", "count", String.format(Locale.ROOT, "%,d", bytes >> 20))
                : Message.of("photo.bytes", "count", String.format(Locale.ROOT, "%,d", bytes));
    }
}
