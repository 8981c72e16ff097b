package tenterbook.ledger.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.slf4j.LoggerFactory;

/**
 * A folder of the computer's temporary folder, for this user alone where the system knows users; deleted when closed. It is named
 * after the process, so that what a killed one left is told, and deleted when the next folder for the same purpose is made.
 */
public final class TemporaryFolder implements AutoCloseable {
    private final Path path;

    /**
     * @param purpose of a program's temporary folders, as in {@code tenterbook-ledger}
     * @throws IOException if it cannot be made
     */
    public TemporaryFolder(String purpose) throws IOException {
        path = Files.createTempDirectory(purpose + "-" + ProcessHandle.current().pid() + "-");
        clearLeft(purpose);
    }

    public Path path() {
        return path;
    }

    private void clearLeft(String purpose) throws IOException {
        Pattern named = Pattern.compile(Pattern.quote(purpose) + "-(\\d{1,18})-\\d+");
        try (DirectoryStream<Path> all = Files.newDirectoryStream(path.getParent(), purpose + "-*")) {
            for (Path each : all) {
                Matcher process = named.matcher(each.getFileName().toString());
                if (process.matches()
                        && !running(Long.parseLong(process.group(1)))
                        && Files.isDirectory(each, LinkOption.NOFOLLOW_LINKS)) {
                    clear(each);
                }
            }
        }
    }

    private static boolean running(long process) {
        return ProcessHandle.of(process).filter(ProcessHandle::isAlive).isPresent();
    }

    private static void clear(Path left) {
        try {
            delete(left);
        } catch (IOException | UncheckedIOException e) {
            LoggerFactory.getLogger(TemporaryFolder.class).info("Not deleted: {}", left, e);
        }
    }

    /** Deletes a folder with all that is in it, where it is there. */
    static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            List<Path> all;
            try (Stream<Path> inside = Files.walk(folder)) {
                all = inside.sorted(Comparator.reverseOrder()).toList();
            }
            for (Path each : all) {
                Files.deleteIfExists(each);
            }
        }
    }

    @Override
    public void close() throws IOException {
        delete(path);
    }
}
