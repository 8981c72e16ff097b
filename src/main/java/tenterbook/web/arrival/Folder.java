package tenterbook.web.arrival;

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

/** The files of a folder that someone named. */
public final class Folder {
    /** More at once are refused: a whole disk named by mistake. */
    public static final int MOST = 20_000;

    private Folder() {}

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
            throw refused("a folder outside the archive", "the archive’s own folder in it: " + folder);
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
                    // It gets its own sentence when its turn comes and it cannot be opened.
                    if (!file.equals(folder)) {
                        found.add(file);
                    }
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            throw refused("a folder that can be read", e.getMessage());
        }
        if (found.size() > MOST) {
            throw refused("a folder of at most %,d files".formatted(MOST), "more in " + folder);
        }
        if (found.isEmpty()) {
            throw refused("a folder with photographs in it", "no file in " + folder);
        }
        Collections.sort(found);
        return found;
    }

    /** Where it truly lies: the named folder may be a link to one on another disk, or to the archive. */
    private static Path real(Path folder) {
        try {
            return folder.toRealPath();
        } catch (IOException e) {
            throw refused("a folder that can be read", e.getMessage());
        }
    }

    private static boolean hidden(Path file) {
        return file.getFileName().toString().startsWith(".");
    }

    private static Path folder(String typed) {
        String text = typed == null ? "" : typed.strip();
        if (text.isEmpty()) {
            throw refused("the folder’s path, as in /home/ines/photographs", "nothing");
        }
        Path folder;
        try {
            folder = Path.of(text);
        } catch (InvalidPathException e) {
            throw refused("the path of a folder on this computer", "“" + text + "”");
        }
        if (!folder.isAbsolute()) {
            throw refused("a whole path, from the root of the disk on", "“" + text + "”");
        }
        if (!Files.exists(folder)) {
            throw refused("a folder that is there", "nothing at “" + text + "”");
        }
        if (!Files.isDirectory(folder)) {
            throw refused("a folder", "a file at “" + text + "”");
        }
        if (!Files.isReadable(folder)) {
            throw refused("a folder that this program may read", "“" + text + "”, which it may not");
        }
        return folder;
    }

    private static IllegalArgumentException refused(String expected, String found) {
        return new IllegalArgumentException(
                "No photograph was taken in. Expected %s; found %s. Nothing was changed.".formatted(expected, found));
    }
}
