package tenterbook.archive.arrival;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import tenterbook.words.Refusal;

/** The files of a folder that someone named. */
public final class PhotoFolder {
    /** More are refused, as when a whole disk is named by mistake. */
    public static final int MOST = 20_000;

    private PhotoFolder() {}

    /**
     * The ordinary files in a folder, by name; hidden ones (a dot before the name) are left out, and links inside it are
     * not followed.
     *
     * @param typed as a person typed it
     * @param within whether the folders inside it count too
     * @param archive the archive's own folder, which is refused
     * @throws IllegalArgumentException with a sentence, if it is not there, no folder, not readable, the archive itself, empty
     *     or holds more than {@value #MOST} files
     */
    public static List<Path> files(String typed, boolean within, Path archive) {
        Path folder = real(folder(typed));
        Path own = real(archive);
        if (folder.startsWith(own) || within && own.startsWith(folder)) {
            throw Refusal.of("arrival.folder.archive", "folder", folder);
        }
        List<Path> found = new ArrayList<>();
        try {
            Files.walkFileTree(folder, java.util.Set.of(), within ? 40 : 1, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult preVisitDirectory(Path inside, BasicFileAttributes what) {
                    return !inside.equals(folder) && hidden(inside)
                            ? FileVisitResult.SKIP_SUBTREE
                            : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes what) {
                    if (what.isRegularFile() && !hidden(file)) {
                        found.add(file);
                    }
                    return found.size() > MOST ? FileVisitResult.TERMINATE : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFileFailed(Path file, IOException why) {
                    // Reported when it cannot be opened later.
                    if (!file.equals(folder)) {
                        found.add(file);
                    }
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            throw Refusal.of("arrival.folder.unreadable", "why", String.valueOf(e.getMessage()));
        }
        if (found.size() > MOST) {
            throw Refusal.of("arrival.folder.too-many", "most", MOST, "folder", folder);
        }
        if (found.isEmpty()) {
            throw Refusal.of("arrival.folder.empty", "folder", folder);
        }
        Collections.sort(found);
        return found;
    }

    /** The real path: the folder may be a link to another disk, or to the archive. */
    private static Path real(Path folder) {
        try {
            return folder.toRealPath();
        } catch (IOException e) {
            throw Refusal.of("arrival.folder.unreadable", "why", String.valueOf(e.getMessage()));
        }
    }

    private static boolean hidden(Path file) {
        return file.getFileName().toString().startsWith(".");
    }

    private static Path folder(String typed) {
        String text = typed == null ? "" : typed.strip();
        if (text.isEmpty()) {
            throw Refusal.of("arrival.folder.none");
        }
        Path folder;
        try {
            folder = Path.of(text);
        } catch (InvalidPathException e) {
            throw Refusal.of("arrival.folder.no-path", "typed", text);
        }
        if (!folder.isAbsolute()) {
            throw Refusal.of("arrival.folder.relative", "typed", text);
        }
        if (!Files.exists(folder)) {
            throw Refusal.of("arrival.folder.not-there", "typed", text);
        }
        if (!Files.isDirectory(folder)) {
            throw Refusal.of("arrival.folder.a-file", "typed", text);
        }
        if (!Files.isReadable(folder)) {
            throw Refusal.of("arrival.folder.forbidden", "typed", text);
        }
        return folder;
    }
}
