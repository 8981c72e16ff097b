package tenterbook.exchange.bag;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/**
 * Every ordinary file in a bag by its path with “/”. Links are never followed.
 *
 * @param files by path from the bag's folder
 */
record BagListing(NavigableMap<String, Entry> files) {
    private static final int MOST_FILES = 1_000_000;
    private static final int DEEPEST = 64;

    record Entry(Path path, long bytes) {}

    static BagListing of(Path root, Findings findings, Progress progress) throws IOException {
        NavigableMap<String, Entry> files = new TreeMap<>();
        Files.walkFileTree(
                root, EnumSet.noneOf(java.nio.file.FileVisitOption.class), DEEPEST, new SimpleFileVisitor<>() {
                    @Override
                    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                        progress.orStop();
                        String name = name(root, file);
                        if (attributes.isSymbolicLink()) {
                            findings.add(name, Message.of("bag.link"));
                        } else if (attributes.isDirectory()) {
                            findings.add(name, Message.of("bag.too-deep", "most", DEEPEST - 1));
                        } else if (!attributes.isRegularFile()) {
                            findings.add(name, Message.of("bag.no-ordinary-file"));
                        } else {
                            files.put(name, new Entry(file, attributes.size()));
                        }
                        if (files.size() > MOST_FILES) {
                            findings.add(Message.of("bag.the-bag"), Message.of("bag.too-many", "most", MOST_FILES));
                            return FileVisitResult.TERMINATE;
                        }
                        return FileVisitResult.CONTINUE;
                    }

                    @Override
                    public FileVisitResult visitFileFailed(Path file, IOException e) {
                        findings.add(name(root, file), Message.of("bag.not-read", "why", e.toString()));
                        return FileVisitResult.CONTINUE;
                    }
                });
        BagListing listing = new BagListing(files);
        listing.names(findings);
        return listing;
    }

    private static String name(Path root, Path file) {
        Path inside = root.relativize(file);
        StringBuilder name = new StringBuilder();
        inside.forEach(part -> name.append(name.length() == 0 ? "" : "/").append(part));
        return name.toString();
    }

    private void names(Findings findings) {
        Map<String, String> seen = new HashMap<>();
        for (String name : files.keySet()) {
            BagPath.danger(name).ifPresent(why -> findings.add(name, Message.of("bag.name", "why", why)));
            String other = seen.putIfAbsent(BagPath.sameOnSomeDisks(name), name);
            if (other != null) {
                findings.add(name, Message.of("bag.same-name", "other", BagPath.shown(other)));
            }
        }
    }

    boolean has(String name) {
        return files.containsKey(name);
    }

    /** The files under {@code data/}. */
    NavigableMap<String, Entry> payload() {
        return files.subMap("data/", true, "data0", false);
    }

    long payloadBytes() {
        return payload().values().stream().mapToLong(Entry::bytes).sum();
    }

    /** Names by their composed form, for a manifest that writes its accents another way than the disk. */
    Map<String, String> byComposedName() {
        return files.keySet().stream().collect(Collectors.toMap(BagPath::composed, name -> name, (one, two) -> one));
    }
}
