package tenterbook.app.open;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.slf4j.LoggerFactory;
import tenterbook.web.server.Server;

/**
 * The address at which an archive is served on this computer, for a second start of the program: its port stands in a file {@code
 * port} beside the lock. The file alone proves nothing, since a killed program leaves it; ask only while the archive is in use.
 */
public final class RunningAddress {
    private static final Duration PAUSE = Duration.ofMillis(100);

    private final Path file;

    private RunningAddress(Path archive) {
        this.file = archive.resolve("port");
    }

    public static RunningAddress in(Path archive) {
        return new RunningAddress(archive);
    }

    /** Notes the port; where that fails, a second start will not find this one, which is logged. */
    public void note(int port) {
        try {
            Files.writeString(file, port + "\n");
        } catch (IOException e) {
            LoggerFactory.getLogger(RunningAddress.class).warn("The port was not noted in {}", file, e);
        }
    }

    public void forget() {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            LoggerFactory.getLogger(RunningAddress.class).warn("{} was not deleted", file, e);
        }
    }

    /** Empty where no port is noted, or where nothing on this computer listens on it. */
    public Optional<String> now() {
        try {
            int port = Integer.parseInt(Files.readString(file).strip());
            return port > 0 && port <= 65_535 && !Server.free(port) ? Optional.of(of(port)) : Optional.empty();
        } catch (IOException | NumberFormatException e) {
            return Optional.empty();
        }
    }

    /** As {@link #now}, after waiting for a program that has only just begun. */
    public Optional<String> within(Duration longest) throws InterruptedException {
        long end = System.nanoTime() + longest.toNanos();
        Optional<String> found = now();
        while (found.isEmpty() && System.nanoTime() < end) {
            Thread.sleep(PAUSE.toMillis());
            found = now();
        }
        return found;
    }

    static String of(int port) {
        return "http://127.0.0.1:" + port;
    }
}
