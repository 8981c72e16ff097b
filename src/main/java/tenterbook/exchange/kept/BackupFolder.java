package tenterbook.exchange.kept;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import tenterbook.exchange.bag.Checked;

/**
 * A backup of an archive: {@code photos} and {@code papers}, each file once under its digest, and under {@code ledgers} a bag of
 * the ledger for each generation, which names the files it needs there.
 */
public record BackupFolder(Path root) {
    /** Stands in the description of a bag whose photographs and papers lie in the backup around it. */
    public static final String FILES_LABEL = "Tenterbook-Files";

    public static final String BESIDE = "beside";

    /** Of the name of a backup's folder, after that of the archive's. */
    public static final String ENDING = "-backup";

    private static final DateTimeFormatter NAME =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

    /** The backup of an archive on the disk that a person chose. */
    public static BackupFolder on(Path disk, Path archive) {
        return new BackupFolder(disk.resolve(archive.getFileName() + ENDING));
    }

    public Path ledgers() {
        return root.resolve("ledgers");
    }

    public Path generation(Instant at) {
        return ledgers().resolve(name(at));
    }

    /** The generations that are there, by the moment of each. */
    public NavigableMap<Instant, Path> generations() throws IOException {
        NavigableMap<Instant, Path> found = new TreeMap<>();
        if (!Files.isDirectory(ledgers())) {
            return found;
        }
        try (Stream<Path> inside = Files.list(ledgers())) {
            for (Path each : inside.toList()) {
                if (Files.isDirectory(each, LinkOption.NOFOLLOW_LINKS)) {
                    moment(each.getFileName().toString()).ifPresent(at -> found.put(at, each));
                }
            }
        }
        return found;
    }

    /** The name of a generation. */
    public static String name(Instant at) {
        return NAME.format(at);
    }

    /** When a generation of this name was made; empty for any other name. */
    public static Optional<Instant> moment(String name) {
        try {
            return Optional.of(NAME.parse(name, Instant::from));
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    public static void delete(Path generation) throws IOException {
        List<Path> all;
        try (Stream<Path> inside = Files.walk(generation)) {
            all = inside.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path each : all) {
            Files.delete(each);
        }
    }

    /**
     * The bag to restore from: the newest generation where a backup's folder is named, or the folder that holds one backup; else
     * what is named.
     */
    public static Path bagIn(Path named) throws IOException {
        if (Files.exists(named.resolve("bagit.txt"))) {
            return named;
        }
        NavigableMap<Instant, Path> generations = new BackupFolder(named).generations();
        if (generations.isEmpty() && Files.isDirectory(named)) {
            List<Path> backups;
            try (Stream<Path> inside = Files.list(named)) {
                backups = inside.filter(each -> each.getFileName().toString().endsWith(ENDING))
                        .toList();
            }
            generations = backups.size() == 1 ? new BackupFolder(backups.get(0)).generations() : generations;
        }
        return generations.isEmpty() ? named : generations.lastEntry().getValue();
    }

    /** Adds the files that a generation's bag needs from the backup around it; nothing for any other bag. */
    public static void addShared(Checked checked, Path bag, NavigableMap<String, Path> parts) throws IOException {
        Path ledgers = bag.toAbsolutePath().normalize().getParent();
        if (checked.info(FILES_LABEL).filter(BESIDE::equals).isPresent()
                && ledgers != null
                && ledgers.getParent() != null) {
            new BackupFolder(ledgers.getParent()).addFiles(parts);
        }
    }

    public void addFiles(NavigableMap<String, Path> parts) throws IOException {
        for (KeptFolder folder : KeptFolder.values()) {
            KeptFiles.in(root.resolve(folder.path(""))).files().values().stream()
                    .flatMap(List::stream)
                    .forEach(file -> parts.put(folder.path(file.path()), file.file()));
        }
    }
}
