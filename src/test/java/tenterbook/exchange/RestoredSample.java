package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.imaging.Photo;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.search.PieceIndex;
import tenterbook.search.recognition.Recogniser;
import tenterbook.web.piece.TagFacet;

/**
 * The sample archive, restored from its bag once in each build and copied for every test that wants it. Originals are
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
                String ofBuild = System.getProperty("restored.sample", "");
                restored = ofBuild.isEmpty()
                        ? restore(temporaryFolder().resolve("archive"))
                        : restoredOnce(Path.of(ofBuild).toAbsolutePath());
            } catch (IOException e) {
                throw new UncheckedIOException("restoring the sample archive", e);
            }
        }
        return restored;
    }

    /** By the first process of a build that wants it; the others wait. Those of earlier builds are deleted. */
    private static Path restoredOnce(Path folder) throws IOException {
        Files.createDirectories(folder.getParent());
        Path lock = folder.resolveSibling("restored-sample.lock");
        try (FileChannel channel = FileChannel.open(lock, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                FileLock held = channel.lock()) {
            assert held.isValid();
            if (!Files.exists(folder)) {
                try (DirectoryStream<Path> earlier =
                        Files.newDirectoryStream(folder.getParent(), "restored-sample-*")) {
                    earlier.forEach(RestoredSample::delete);
                }
                Path making = folder.resolveSibling(folder.getFileName() + ".making");
                Files.move(restore(making), folder, StandardCopyOption.ATOMIC_MOVE);
            }
        }
        return folder;
    }

    /** With all that is derived from it, so that no copy has to make it. */
    private static Path restore(Path folder) throws IOException {
        new Restore(Clock.systemUTC()).restore(Path.of("sample-archive").toAbsolutePath(), folder, Progress.UNWATCHED);
        try (Archive archive = Archive.open(folder, Clock.systemUTC());
                TagTable tags = TagTable.open(archive);
                PieceIndex index = PieceIndex.open(archive, new TagFacet(tags));
                Recogniser recogniser = Recogniser.open(archive)) {
            List<Photo> photos = archive.ledger().all(Kinds.PHOTO).stream()
                    .map(Saved::record)
                    .toList();
            // All side by side; the index has the cloths of pieces looked at from the other end.
            List<Photo> backwards = new ArrayList<>(photos);
            Collections.reverse(backwards);
            CompletableFuture<?> cloths =
                    CompletableFuture.runAsync(() -> archive.cloths().of(backwards));
            recogniser.recognise(photos.get(0).digest(), Progress.UNWATCHED);
            tags.bringUp(Progress.UNWATCHED);
            assertThat(index.await(Duration.ofMinutes(2))).isTrue();
            cloths.join();
            for (int i = 0; i < 1200 && recogniser.waiting() > 0; i++) {
                Thread.sleep(100);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return folder;
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
