package tenterbook.imaging;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.imaging.file.TruncationCheck;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/**
 * The originals, each under its own SHA-256: {@code photos/ab/abcd….jpg}, kept as {@link HashedFiles} promises. The extension
 * follows the bytes. Safe for use from many threads.
 */
public final class Originals {
    /** The usual limit on one photograph. */
    public static final long LIMIT_BYTES = 50L << 20;

    private static final Pattern NAME = Pattern.compile("([0-9a-f]{64})\\.[a-z]+");

    private final Path folder;
    private final HashedFiles files;

    /** Opens or creates the folder and clears what an interrupted arrival left behind. */
    public Originals(Path photosDir) throws IOException {
        this(photosDir, new HashedFiles(photosDir));
    }

    /** Those of an archive; where that is read-only, nothing is created in its folder. */
    public Originals(ArchiveFolder archive) throws IOException {
        this(archive.photos(), new HashedFiles(archive.photos(), archive.arriving()));
    }

    private Originals(Path folder, HashedFiles files) {
        this.folder = folder;
        this.files = files;
    }

    /** A name for bytes on their way in, not there yet; what is left under such names is cleared at the next opening. */
    public Path arriving() {
        return files.arriving();
    }

    /**
     * Takes a photograph in. The same bytes a second time change nothing; a kept file that no longer matches its name is
     * replaced by the good bytes.
     *
     * @param limitBytes a longer stream is refused; see {@link #LIMIT_BYTES}
     * @throws PhotoRefused if it is empty, too large, broken off or no picture; nothing is kept
     * @throws IOException if the stream or the disk fails; nothing is kept
     */
    public StoredOriginal store(InputStream bytes, long limitBytes) throws IOException {
        Path part = arriving();
        try {
            Arrived arrived = receive(bytes, part, limitBytes);
            MediaType type = kindOf(part, arrived);
            boolean alreadyThere = files.place(part, arrived.digest, type.extension());
            Path target = HashedFiles.path(folder, arrived.digest, type.extension());
            return new StoredOriginal(arrived.digest, target, arrived.size, type, alreadyThere);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** Where an original lies; empty if it is not kept here. */
    public Optional<Path> find(Digest digest) {
        return find(folder, digest);
    }

    /** The same in a folder that need not be there. */
    public static Optional<Path> find(Path folder, Digest digest) {
        return Stream.of(MediaType.values())
                .map(type -> HashedFiles.path(folder, digest, type.extension()))
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
    public HashedFiles.Check verify(Digest digest) throws IOException {
        Optional<Path> path = find(digest);
        return path.isEmpty() ? HashedFiles.Check.MISSING : HashedFiles.check(path.get(), digest);
    }

    /**
     * Takes the bytes of a photograph that is not kept.
     *
     * @param file where they are put; the caller deletes it
     * @throws PhotoRefused if it is empty, too large, broken off or no picture
     */
    static MediaType received(InputStream bytes, Path file, long limitBytes) throws IOException {
        return kindOf(file, receive(bytes, file, limitBytes));
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
        Optional<Message> fault = TruncationCheck.fault(part, type);
        if (fault.isPresent()) {
            throw PhotoRefused.of("photo.not-whole", "fault", fault.get());
        }
        return type;
    }

    private static Message megabytes(long bytes) {
        return bytes >= 1 << 20
                ? Message.of("photo.megabytes", "count", String.format(Locale.ROOT, "%,d", bytes >> 20))
                : Message.of("photo.bytes", "count", String.format(Locale.ROOT, "%,d", bytes));
    }
}
