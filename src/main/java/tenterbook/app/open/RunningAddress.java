package tenterbook.app.open;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.slf4j.LoggerFactory;
import tenterbook.web.server.Server;

/**
 * The address at which an archive is served on this computer, for a second start of the program: its port stands in a file {@code
 * port} beside the lock, with the process that wrote it. What a killed program left is not believed, since its process has ended.
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
            Files.writeString(file, port + " " + process(ProcessHandle.current()) + "\n");
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

    /** Empty where no port is noted by a program that still runs, or where nothing listens on it. */
    public Optional<String> now() {
        try {
            String[] noted = Files.readString(file).strip().split(" ", 2);
            int port = Integer.parseInt(noted[0]);
            boolean runs = noted.length == 2
                    && ProcessHandle.of(Long.parseLong(noted[1].split(" ")[0]))
                            .map(RunningAddress::process)
                            .filter(noted[1]::equals)
                            .isPresent();
            return runs && port > 0 && port <= 65_535 && !Server.free(port) ? Optional.of(of(port)) : Optional.empty();
        } catch (IOException | NumberFormatException e) {
            return Optional.empty();
        }
    }

    /** Its number, which the system gives again, and when it began. */
    private static String process(ProcessHandle process) {
        return process.pid() + " "
                + process.info().startInstant().map(Instant::toString).orElse("-");
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
