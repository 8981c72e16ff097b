package tenterbook.app.open;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Where the archive of whoever uses this computer is kept: the folder that was chosen, which is remembered, or else the usual one.
 *
 * @see <a href="https://specifications.freedesktop.org/basedir-spec/0.8/">XDG Base Directory Specification 0.8</a>
 */
public final class ArchivePlace {
    private final Path usual;
    private final Path memory;
    private final Path home;

    private ArchivePlace(Path usual, Path settings, Path home) {
        this.usual = usual;
        this.memory = settings.resolve("archive-place");
        this.home = home;
    }

    public static ArchivePlace ofThisComputer() {
        return of(System.getProperty("os.name"), System.getenv(), Path.of(System.getProperty("user.home")));
    }

    /** @param system the name of the operating system, as in {@code os.name} */
    public static ArchivePlace of(String system, Map<String, String> environment, Path home) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("windows")) {
            Path own = folder(environment, "APPDATA", home.resolve("AppData").resolve("Roaming"))
                    .resolve("Tenterbook");
            return new ArchivePlace(own.resolve("archive"), own, home);
        }
        if (name.startsWith("mac")) {
            Path own = home.resolve("Library").resolve("Application Support").resolve("Tenterbook");
            return new ArchivePlace(own.resolve("archive"), own, home);
        }
        Path data = folder(environment, "XDG_DATA_HOME", home.resolve(".local").resolve("share"));
        Path settings = folder(environment, "XDG_CONFIG_HOME", home.resolve(".config"));
        return new ArchivePlace(data.resolve("tenterbook").resolve("archive"), settings.resolve("tenterbook"), home);
    }

    /** A relative path in such a variable is to be ignored, says the specification. */
    private static Path folder(Map<String, String> environment, String variable, Path otherwise) {
        String named = environment.getOrDefault(variable, "");
        return !named.isEmpty() && Path.of(named).isAbsolute() ? Path.of(named) : otherwise;
    }

    /** The chosen folder, else the usual one; neither need be there. */
    public Path folder() {
        return remembered().orElse(usual);
    }

    /** The folder that was chosen; empty where none was, or where what is remembered cannot be read. */
    public Optional<Path> remembered() {
        try {
            if (Files.isRegularFile(memory)) {
                Path folder = Path.of(Files.readString(memory).strip());
                return Optional.of(folder).filter(Path::isAbsolute);
            }
        } catch (IOException | InvalidPathException e) {
            // Then it is asked again; the archive itself is where it was.
        }
        return Optional.empty();
    }

    /** @throws ArchiveProblem if it cannot be written down; nothing else was changed */
    public void remember(Path folder) {
        try {
            Files.createDirectories(memory.getParent());
            Path part = Files.createTempFile(memory.getParent(), "archive-place", ".part");
            Files.writeString(part, folder.toAbsolutePath().normalize() + "\n");
            Files.move(part, memory, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new ArchiveProblem(
                    Message.of("first-start.not-remembered", "file", memory, "why", Explained.of(e)), e);
        }
    }

    /**
     * Reads a folder that a person typed; {@code ~} is the home folder.
     *
     * @throws Refusal if it is not a whole path
     */
    public Path typed(String text) {
        String path = text.strip();
        try {
            if (path.equals("~") || path.startsWith("~/") || path.startsWith("~\\")) {
                return home.resolve(path.substring(Math.min(2, path.length()))).normalize();
            }
            Path folder = Path.of(path);
            if (folder.isAbsolute()) {
                return folder.normalize();
            }
        } catch (InvalidPathException e) {
            // As below.
        }
        throw Refusal.of("first-start.not-a-folder", "typed", path, "example", usual);
    }
}
