package tenterbook.imaging;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoFacts;
import tenterbook.imaging.file.PhotoFactsReader;
import tenterbook.imaging.pixels.Jpeg;
import tenterbook.imaging.pixels.PhotoReader;
import tenterbook.imaging.pixels.RgbPicture;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/**
 * Three sizes of each photograph, as upright sRGB JPEG files without metadata. The folder may be emptied at any time:
 * what is missing is made again from the original. Safe for use from many threads; two that want the same preview may
 * both make it, and the results are equal.
 */
public final class Previews {
    /** High, so that cloth stays cloth; common practice for large previews is 0.85 to 0.92. */
    static final float QUALITY = 0.86f;

    private static final PreviewSize[] ORDER = {PreviewSize.LARGE, PreviewSize.MEDIUM, PreviewSize.SMALL};

    /** The long edges to be read, the largest first. */
    static final int[] EDGES = Stream.of(ORDER).mapToInt(PreviewSize::longEdge).toArray();

    private final Path folder;
    private final Path earlier;
    private final Originals originals;
    private final PhotoReader reader;

    public Previews(Path previewsDir, Originals originals) throws IOException {
        this(previewsDir, originals, new PhotoReader());
    }

    Previews(Path previewsDir, Originals originals, PhotoReader reader) throws IOException {
        this(previewsDir, previewsDir, originals, reader);
    }

    /** Those of an archive; where that is read-only, its own are read and missing ones are made elsewhere. */
    public Previews(ArchiveFolder archive, Originals originals) throws IOException {
        this(archive.earlierPreviews(), archive.previews(), originals, new PhotoReader());
    }

    private Previews(Path earlier, Path folder, Originals originals, PhotoReader reader) throws IOException {
        this.earlier = earlier;
        this.folder = Files.createDirectories(folder);
        this.reader = reader;
        this.originals = originals;
    }

    /**
     * The file of one preview, made now if it is missing.
     *
     * @return empty if the original is not kept or cannot be decoded here
     * @throws IOException if a file cannot be read or written
     */
    public Optional<Path> get(Digest digest, PreviewSize size) throws IOException {
        Path before = pathOf(earlier, digest, size);
        if (isThere(before)) {
            return Optional.of(before);
        }
        Path path = pathOf(folder, digest, size);
        return DecodePermits.take(() -> isThere(path) || made(digest) ? Optional.of(path) : Optional.empty());
    }

    private boolean made(Digest digest) throws IOException {
        Optional<Path> original = originals.find(digest);
        if (original.isEmpty()) {
            return false;
        }
        PhotoFacts facts = PhotoFactsReader.read(original.get());
        MediaType type = MediaType.of(original.get())
                .orElseThrow(() -> new IOException(
                        Message.of("photo.no-picture", "file", original.get().getFileName())
                                .inEnglish()));
        List<RgbPicture> sizes = reader.read(original.get(), type, facts, EDGES).sizes();
        if (sizes.isEmpty()) {
            return false;
        }
        write(digest, sizes);
        return true;
    }

    /** Writes pixels that are at hand, one picture for each of {@link #EDGES}. */
    void write(Digest digest, List<RgbPicture> sizes) throws IOException {
        for (int i = 0; i < ORDER.length; i++) {
            place(pathOf(folder, digest, ORDER[i]), Jpeg.encode(sizes.get(i), QUALITY));
        }
    }

    boolean complete(Digest digest) {
        for (PreviewSize size : PreviewSize.values()) {
            if (!isThere(pathOf(folder, digest, size))) {
                return false;
            }
        }
        return true;
    }

    private void place(Path path, byte[] bytes) throws IOException {
        Files.createDirectories(path.getParent());
        Path part = path.resolveSibling(UUID.randomUUID() + ".part");
        try {
            Files.write(part, bytes);
            Files.move(part, path, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static Path pathOf(Path folder, Digest digest, PreviewSize size) {
        return folder.resolve(digest.hex().substring(0, 2)).resolve(digest.hex() + "-" + size.longEdge() + ".jpg");
    }

    /** A preview is not synced, so a power loss can leave it empty: then it counts as missing. */
    private static boolean isThere(Path path) {
        try {
            return Files.size(path) > 0;
        } catch (IOException e) {
            return false;
        }
    }
}
