package tenterbook.exchange;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * The sample archive as a program of format 1 packed it. The bag is kept as it was but for its photographs, which are still those
 * of today's sample archive, byte for byte: its manifests cover them.
 */
public final class FormatOneBag {
    private static final Path KEPT = Path.of("src/test/resources/tenterbook/exchange/format-1-bag");
    private static final Path PHOTOS = Path.of("sample-archive/data/photos");

    private FormatOneBag() {}

    /** The whole bag, as {@code folder}, which must not be there yet. */
    public static Path at(Path folder) {
        try {
            copy(KEPT, folder);
            copy(PHOTOS, folder.resolve("data/photos"));
        } catch (IOException e) {
            throw new UncheckedIOException("putting the bag of format 1 together in " + folder, e);
        }
        return folder;
    }

    private static void copy(Path from, Path to) throws IOException {
        List<Path> all;
        try (Stream<Path> files = Files.walk(from)) {
            all = files.toList();
        }
        for (Path each : all) {
            Files.copy(each, to.resolve(from.relativize(each).toString()));
        }
    }
}
