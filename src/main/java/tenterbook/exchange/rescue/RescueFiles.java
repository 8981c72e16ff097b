package tenterbook.exchange.rescue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tenterbook.archive.Archive;
import tenterbook.archive.arrival.ArrivalReport;
import tenterbook.archive.arrival.Arrivals;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.exchange.kept.KeptFolder;
import tenterbook.imaging.IntakePool.Incoming;
import tenterbook.imaging.Originals;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;
import tenterbook.imaging.file.MediaType;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Message;

/**
 * The files of a folder that something is rescued from.
 *
 * @param databases files {@code ledger.db}
 * @param texts files {@code ledger.jsonl}
 * @param others every other file, which may be a photograph or a paper whatever its name
 */
record RescueFiles(List<Path> databases, List<Path> texts, List<Path> others) {
    /** Derived from the rest and made anew. */
    private static final Set<String> DERIVED = Set.of("index", "derived", "previews", HashedFiles.ARRIVING);

    private static final Set<String> ENDINGS =
            Set.of("jpg", "jpeg", "png", "gif", "webp", "tif", "tiff", "heic", "heif", "avif", "pdf", "bmp");

    static RescueFiles under(Path from, Progress progress) throws IOException {
        RescueFiles files = new RescueFiles(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        if (Files.isRegularFile(from)) {
            (from.getFileName().toString().endsWith(".jsonl") ? files.texts : files.databases).add(from);
            return files;
        }
        Files.walkFileTree(from, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                progress.orStop();
                return !folder.equals(from)
                                && DERIVED.contains(folder.getFileName().toString())
                        ? FileVisitResult.SKIP_SUBTREE
                        : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                String name = file.getFileName().toString();
                if (!attributes.isRegularFile()) {
                    return FileVisitResult.CONTINUE;
                }
                if (name.equals("ledger.db")) {
                    files.databases.add(file);
                } else if (name.equals("ledger.jsonl")) {
                    files.texts.add(file);
                } else if (maybeKept(name)) {
                    files.others.add(file);
                }
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException why) {
                // One that cannot be read is missed by its digest, if the ledger names it.
                return FileVisitResult.CONTINUE;
            }
        });
        return files;
    }

    private static boolean maybeKept(String name) {
        return name.matches("[0-9a-f]{64}.*")
                || ENDINGS.contains(name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
    }

    /** Puts every photograph and paper that is whole into the archive, by its digest. */
    void into(Archive archive, RescueList list, Progress progress) throws IOException {
        Map<KeptFolder, Map<String, String>> wanted = new HashMap<>();
        for (KeptFolder folder : KeptFolder.values()) {
            wanted.put(folder, new TreeMap<>(folder.named(archive)));
        }
        List<Path> unnamed = new ArrayList<>();
        Map<KeptFolder, Integer> placed = new HashMap<>();
        int done = 0;
        for (Path file : others) {
            progress.at(++done, others.size(), Message.of("rescue.reading", "file", file.getFileName()));
            progress.orStop();
            place(file, archive, wanted, unnamed, placed, list);
        }
        for (KeptFolder folder : KeptFolder.values()) {
            wanted.get(folder).forEach((hex, record) -> list.missing(folder.missing(record, hex)));
        }
        list.whole(Message.of(
                "rescue.files-whole",
                "photos",
                placed.getOrDefault(KeptFolder.PHOTOS, 0),
                "papers",
                placed.getOrDefault(KeptFolder.PAPERS, 0)));
        join(archive, unnamed, list, progress);
    }

    private static void place(
            Path file,
            Archive archive,
            Map<KeptFolder, Map<String, String>> wanted,
            List<Path> unnamed,
            Map<KeptFolder, Integer> placed,
            RescueList list)
            throws IOException {
        String hex;
        try {
            hex = Sums.of(file, List.of("sha256"), new Pace(Progress.UNWATCHED, 0))
                    .hex()
                    .get("sha256");
        } catch (IOException e) {
            list.doubtful(new Finding(file.toString(), Message.of("exchange.file.not-to-end", "why", e.toString())));
            return;
        }
        String name = file.getFileName().toString();
        for (KeptFolder folder : KeptFolder.values()) {
            if (wanted.get(folder).remove(hex) != null) {
                Path to =
                        folder.in(archive.folder()).resolve(hex.substring(0, 2)).resolve(hex + ending(file));
                Files.createDirectories(to.getParent());
                Sums.copy(file, to, new Pace(Progress.UNWATCHED, 0));
                placed.merge(folder, 1, Integer::sum);
                return;
            }
        }
        if (name.matches("[0-9a-f]{64}\\..*") && !name.startsWith(hex)) {
            // Its bytes are not those that its name was made from; perhaps most of the picture can still be seen.
            Path to = archive.folder().root().resolve("doubtful").resolve(name);
            Files.createDirectories(to.getParent());
            if (!Files.exists(to)) {
                Sums.copy(file, to, new Pace(Progress.UNWATCHED, 0));
            }
            list.doubtful(new Finding("doubtful/" + name, Message.of("rescue.file-changed", "found", hex)));
        } else if (!name.endsWith(".pdf") && !Files.exists(kept(archive, file, hex))) {
            unnamed.add(file);
        }
    }

    private static Path kept(Archive archive, Path file, String hex) throws IOException {
        return archive.folder().photos().resolve(hex.substring(0, 2)).resolve(hex + ending(file));
    }

    /** By what the bytes are, as where photographs are taken in. */
    private static String ending(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] head = in.readNBytes(MediaType.HEAD);
            String name = file.getFileName().toString();
            return MediaType.of(head)
                    .map(type -> "." + type.extension())
                    .orElse(name.contains(".") ? name.substring(name.lastIndexOf('.')) : "");
        }
    }

    /** Photographs that no record names wait for their piece in the new archive. */
    private static void join(Archive archive, List<Path> unnamed, RescueList list, Progress progress)
            throws IOException {
        if (unnamed.isEmpty()) {
            return;
        }
        Originals originals = new Originals(archive.folder().photos());
        PhotoIntake intake =
                new PhotoIntake(originals, new Previews(archive.folder().previews(), originals), archive.cloths());
        ArrivalReport report = new Arrivals(archive, intake, archive.author())
                .take(unnamed.stream().map(Incoming::file).toList(), progress);
        list.whole(Message.of("rescue.joined", "count", report.taken().size()));
        report.refused().forEach(sentence -> list.doubtful(new Finding(Message.of("rescue.a-file"), sentence)));
    }
}
