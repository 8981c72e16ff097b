package tenterbook.exchange;

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
import tenterbook.measure.Digest;

/**
 * The files in a photos folder, by what their names say they are.
 *
 * @param originals by the digest their name gives; more than one file only where the same photograph lies there under
 *     two extensions
 * @param strange files whose name is no photograph's
 */
record PhotoFiles(NavigableMap<Digest, List<Photograph>> originals, List<Path> strange) {
    private static final Pattern FORM = Pattern.compile("([0-9a-f]{2})/(\\1[0-9a-f]{62})(\\.[A-Za-z0-9]{1,10})?");
    /** Where photographs are still being received; what lies there is nobody's yet. */
    private static final String ARRIVING = "arriving";

    /** @param path from the photos folder, with “/”, as in {@code ab/abcd….jpg} */
    record Photograph(String path, Path file, long bytes) {}

    static PhotoFiles in(Path photos) throws IOException {
        PhotoFiles found = new PhotoFiles(new TreeMap<>(), new ArrayList<>());
        if (!Files.isDirectory(photos)) {
            return found;
        }
        Path root = photos.toRealPath();
        Files.walkFileTree(root, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                return folder.equals(root.resolve(ARRIVING)) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                String path = root.relativize(file).toString().replace('\\', '/');
                Matcher form = FORM.matcher(path);
                if (attributes.isRegularFile() && form.matches()) {
                    found.originals
                            .computeIfAbsent(new Digest(form.group(2)), missing -> new ArrayList<>())
                            .add(new Photograph(path, file, attributes.size()));
                } else {
                    found.strange.add(file);
                }
                return FileVisitResult.CONTINUE;
            }
        });
        return found;
    }

    static boolean isOriginal(String path) {
        return FORM.matcher(path).matches();
    }

    long bytes() {
        return originals.values().stream()
                .flatMap(List::stream)
                .mapToLong(Photograph::bytes)
                .sum();
    }
}
