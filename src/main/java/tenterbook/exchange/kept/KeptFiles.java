package tenterbook.exchange.kept;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.measure.Digest;

/**
 * The files in a folder of files named by their SHA-256, by name.
 *
 * @param files by the digest their name gives; more than one file only where the same bytes lie there under two extensions
 * @param strange files with other names
 */
public record KeptFiles(NavigableMap<Digest, List<KeptFile>> files, List<Path> strange) {
    private static final Pattern FORM = Pattern.compile("([0-9a-f]{2})/(\\1[0-9a-f]{62})(\\.[A-Za-z0-9]{1,10})?");

    /** @param path from the folder, with “/”, as in {@code ab/abcd….jpg} */
    public record KeptFile(String path, Path file, long bytes) {}

    public static KeptFiles in(Path folder) throws IOException {
        KeptFiles found = new KeptFiles(new TreeMap<>(), new ArrayList<>());
        if (!Files.isDirectory(folder)) {
            return found;
        }
        Path root = folder.toRealPath();
        Files.walkFileTree(root, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path within, BasicFileAttributes attributes) {
                return within.equals(root.resolve(HashedFiles.ARRIVING))
                        ? FileVisitResult.SKIP_SUBTREE
                        : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                String path = root.relativize(file).toString().replace('\\', '/');
                Matcher form = FORM.matcher(path);
                if (attributes.isRegularFile() && form.matches()) {
                    found.files
                            .computeIfAbsent(new Digest(form.group(2)), missing -> new ArrayList<>())
                            .add(new KeptFile(path, file, attributes.size()));
                } else {
                    found.strange.add(file);
                }
                return FileVisitResult.CONTINUE;
            }
        });
        return found;
    }

    public static boolean isKept(String path) {
        return FORM.matcher(path).matches();
    }

    public long bytes() {
        return files.values().stream()
                .flatMap(List::stream)
                .mapToLong(KeptFile::bytes)
                .sum();
    }
}
