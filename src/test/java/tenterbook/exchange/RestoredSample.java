package tenterbook.exchange;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Clock;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;

/**
 * The sample archive, restored from its bag once in each process and copied for every test that wants it. Originals are
 * never changed by the program, so a copy shares them by hard links: a test must not write into one.
 */
public final class RestoredSample {
    private static Path restored;

    private RestoredSample() {}

    /** Makes {@code folder}, which must not be there yet, an archive of its own. */
    public static void copyTo(Path folder) {
        Path from = restored();
        try {
            Files.walkFileTree(from, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult preVisitDirectory(Path each, BasicFileAttributes facts) throws IOException {
                    Files.createDirectory(folder.resolve(from.relativize(each)));
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path each, BasicFileAttributes facts) throws IOException {
                    Path to = folder.resolve(from.relativize(each));
                    if (each.startsWith(from.resolve("photos"))) {
                        Files.createLink(to, each);
                    } else {
                        Files.copy(each, to);
                    }
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException("copying the restored sample archive to " + folder, e);
        }
    }

    private static synchronized Path restored() {
        if (restored == null) {
            try {
                Path archive = temporaryFolder().resolve("archive");
                new Restore(Clock.systemUTC())
                        .restore(Path.of("sample-archive").toAbsolutePath(), archive, Progress.UNWATCHED);
                outline(archive);
                restored = archive;
            } catch (IOException e) {
                throw new UncheckedIOException("restoring the sample archive", e);
            }
        }
        return restored;
    }

    /** Has the cloth on every photograph looked for, so that no copy has to. */
    private static void outline(Path folder) {
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            archive.cloths()
                    .of(archive.ledger().all(Kinds.PHOTO).stream()
                            .map(Saved::record)
                            .toList());
        }
    }

    /** A folder that is deleted when the process ends, for what several test classes share. */
    public static Path temporaryFolder() throws IOException {
        Path folder = Files.createTempDirectory("tenterbook-sample-");
        Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(folder)));
        return folder;
    }

    private static void delete(Path folder) {
        try {
            Files.walkFileTree(folder, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult visitFile(Path each, BasicFileAttributes facts) throws IOException {
                    Files.delete(each);
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult postVisitDirectory(Path each, IOException problem) throws IOException {
                    Files.delete(each);
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            System.err.println("The temporary folder " + folder + " was not deleted: " + e);
        }
    }
}
