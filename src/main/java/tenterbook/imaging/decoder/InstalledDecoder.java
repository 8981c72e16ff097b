package tenterbook.imaging.decoder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.file.TemporaryFolder;
import tenterbook.words.Message;

/** A decoder found on this computer. Each call runs a process of its own in a private folder. Thread-safe. */
public final class InstalledDecoder {
    private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)*");
    private static final int LONGEST_REASON = 200;
    private static final String PURPOSE = "tenterbook-decoder";

    private final DecoderKind kind;
    private final Path path;
    private final BoundedRun run;
    private @Nullable String version;

    InstalledDecoder(DecoderKind kind, Path path, BoundedRun run) {
        this.kind = kind;
        this.path = path;
        this.run = run;
    }

    /** What is done with the decoded picture while its file is there. */
    @FunctionalInterface
    public interface Use<R> {
        /** @param upright whether its pixels stand upright; else the file's own orientation holds */
        R of(Path pixels, boolean upright) throws IOException;
    }

    /** What is done where there is no decoded picture. */
    @FunctionalInterface
    public interface Failure<R> {
        R because(Message why);
    }

    /**
     * Decodes a picture into a file that is deleted afterwards.
     *
     * @param picture is read and never written
     * @throws IOException if the decoder cannot be started, or from {@code use}
     */
    public <R> R decode(Path picture, Use<R> use, Failure<R> failure) throws IOException {
        try (TemporaryFolder folder = new TemporaryFolder(PURPOSE)) {
            Path output = folder.path().resolve("picture." + kind.extension());
            BoundedRun.Ended ended = run.run(kind.command(path, picture.toAbsolutePath(), output), folder.path());
            if (ended.fault() != null) {
                return failure.because(Message.of(
                        "photo.decoder-gave-up",
                        "decoder",
                        name(),
                        "fault",
                        ended.fault(),
                        "said",
                        brief(ended.said())));
            }
            Optional<Path> pixels = written(output);
            return pixels.isPresent()
                    ? use.of(pixels.get(), kind.upright())
                    : failure.because(Message.of(
                            "photo.decoder-gave-up",
                            "decoder",
                            name(),
                            "fault",
                            Message.of("photo.decoder-failed"),
                            "said",
                            brief(ended.said())));
        }
    }

    /** Of a file with several pictures libheif's decoder makes picture-1, picture-2, …; the first counts. */
    private Optional<Path> written(Path output) {
        return Stream.of(output, output.resolveSibling("picture-1." + kind.extension()))
                .filter(Files::isRegularFile)
                .findFirst();
    }

    private static String brief(String said) {
        return said.isEmpty() ? "–" : said.substring(0, Math.min(said.length(), LONGEST_REASON));
    }

    /** Its name and version, such as {@code heif-convert 1.15.1}; the name alone where it does not state its version. */
    public synchronized String name() {
        if (version == null) {
            version = statedVersion();
        }
        return version.isEmpty() ? kind.program() : kind.program() + " " + version;
    }

    private String statedVersion() {
        try (TemporaryFolder folder = new TemporaryFolder(PURPOSE)) {
            Matcher number = NUMBER.matcher(run.run(List.of(path.toString(), "--version"), folder.path())
                    .said());
            return number.find() ? number.group() : "";
        } catch (IOException e) {
            return "";
        }
    }
}
