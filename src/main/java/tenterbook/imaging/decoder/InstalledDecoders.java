package tenterbook.imaging.decoder;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * Looks for a decoder of HEIC and AVIF pictures at each call, so that one installed while the program runs is found.
 * Thread-safe.
 */
public final class InstalledDecoders {
    /** Where programs lie that a desktop's own PATH may not name. */
    private static final List<String> ALSO = List.of("/usr/bin", "/usr/local/bin", "/opt/homebrew/bin");

    private static final InstalledDecoders HERE =
            new InstalledDecoders(folders(System.getenv("PATH")), DecoderBounds.USUAL);

    private final List<Path> folders;
    private final DecoderBounds bounds;
    private final Map<Path, InstalledDecoder> found = new ConcurrentHashMap<>();

    /** @param folders are looked through in order */
    public InstalledDecoders(List<Path> folders, DecoderBounds bounds) {
        this.folders = List.copyOf(folders);
        this.bounds = bounds;
    }

    /** Those on this computer, with the usual bounds. */
    public static InstalledDecoders here() {
        return HERE;
    }

    /** The preferred one; empty where none is installed. */
    public Optional<InstalledDecoder> find() {
        return Stream.of(DecoderKind.values())
                .flatMap(kind -> program(folders, kind.program()).stream()
                        .map(path -> found.computeIfAbsent(path, at -> new InstalledDecoder(kind, at, run()))))
                .findFirst();
    }

    private BoundedRun run() {
        return new BoundedRun(
                bounds, program(folders(System.getenv("PATH")), "prlimit").orElse(null));
    }

    private static Optional<Path> program(List<Path> folders, String name) {
        return folders.stream()
                .flatMap(folder -> Stream.of(folder.resolve(name), folder.resolve(name + ".exe")))
                .filter(file -> Files.isRegularFile(file) && Files.isExecutable(file))
                .findFirst();
    }

    /** Absolute folders only: what lies in the folder that the program was started from is not run. */
    private static List<Path> folders(String path) {
        List<Path> folders = new ArrayList<>();
        Stream.concat(Stream.of((path == null ? "" : path).split(File.pathSeparator)), ALSO.stream())
                .forEach(folder -> {
                    try {
                        if (!folder.isBlank() && Path.of(folder).isAbsolute()) {
                            folders.add(Path.of(folder));
                        }
                    } catch (InvalidPathException e) {
                        // No folder by that name can be there.
                        return;
                    }
                });
        return folders;
    }
}
