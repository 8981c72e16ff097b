package tenterbook.imaging.decoder;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Message;

/**
 * Runs a program without a shell, with an environment of its own, in a folder of its own, and ends it with all that it began
 * when it goes past its bounds.
 */
final class BoundedRun {
    private static final int LOOK_EVERY_MS = 20;
    private static final int LONGEST_SPEECH = 2000;
    private static final List<String> KEPT_ENVIRONMENT = List.of("PATH", "SystemRoot");

    private final DecoderBounds bounds;
    private final @Nullable Path limiter;

    /** @param limiter {@code prlimit}; null where the system has none, and memory is not limited then */
    BoundedRun(DecoderBounds bounds, @Nullable Path limiter) {
        this.bounds = bounds;
        this.limiter = limiter;
    }

    /**
     * What came of it.
     *
     * @param fault why it was ended or failed; null if it came to a good end
     * @param said the first part of what it wrote to its output and error streams
     */
    record Ended(@Nullable Message fault, String said) {}

    /**
     * @param folder where it runs and may write; its length counts as output
     * @throws IOException if the program cannot be started or this thread is interrupted
     */
    Ended run(List<String> command, Path folder) throws IOException {
        Path speech = folder.resolve("said.txt");
        ProcessBuilder builder = new ProcessBuilder(limited(command))
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectInput(ProcessBuilder.Redirect.from(
                        Files.createFile(folder.resolve("nothing")).toFile()))
                .redirectOutput(speech.toFile());
        Map<String, String> environment = builder.environment();
        environment.keySet().retainAll(KEPT_ENVIRONMENT);
        environment.put("LC_ALL", "C");
        environment.put("HOME", folder.toString());
        environment.put("TMPDIR", folder.toString());
        Process process = builder.start();
        try {
            Optional<Message> fault = awaited(process, folder);
            if (fault.isEmpty() && process.exitValue() != 0) {
                fault = Optional.of(Message.of("photo.decoder-failed"));
            }
            return new Ended(fault.orElse(null), heard(speech));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(Message.of("photo.decoder-interrupted").inEnglish(), e);
        } finally {
            end(process);
        }
    }

    private List<String> limited(List<String> command) {
        List<String> whole = new ArrayList<>();
        if (limiter != null) {
            whole.addAll(List.of(
                    limiter.toString(),
                    "--as=" + bounds.memoryBytes(),
                    "--fsize=" + bounds.outputBytes(),
                    "--cpu=" + Math.max(1, bounds.time().toSeconds()),
                    "--core=0"));
        }
        whole.addAll(command);
        return whole;
    }

    private Optional<Message> awaited(Process process, Path folder) throws InterruptedException, IOException {
        long begun = System.nanoTime();
        while (!process.waitFor(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
            if (System.nanoTime() - begun > bounds.time().toNanos()) {
                return Optional.of(Message.of(
                        "photo.decoder-too-slow", "seconds", bounds.time().toSeconds()));
            }
            if (length(folder) >= bounds.outputBytes()) {
                return Optional.of(tooMuch());
            }
        }
        return length(folder) >= bounds.outputBytes() ? Optional.of(tooMuch()) : Optional.empty();
    }

    private Message tooMuch() {
        return Message.of("photo.decoder-too-much", "most", bounds.outputBytes() >> 20);
    }

    private static long length(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.mapToLong(file -> file.toFile().length()).sum();
        }
    }

    /** Ends it and what it began, and waits until it is gone, so that its folder can be deleted. */
    private static void end(Process process) {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
        try {
            process.waitFor(5, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static String heard(Path speech) throws IOException {
        try (InputStream in = Files.newInputStream(speech)) {
            return new String(in.readNBytes(LONGEST_SPEECH), StandardCharsets.UTF_8)
                    .replaceAll("\\p{Cntrl}+", " ")
                    .strip();
        }
    }
}
