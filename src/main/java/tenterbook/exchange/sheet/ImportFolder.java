package tenterbook.exchange.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;

/**
 * Sheets that wait to be brought in, and what was brought in, in the folder {@code imports} of an archive; and which columns were
 * chosen for which headings. No part of the ledger: a sheet is deleted when it is brought in or given up.
 */
public final class ImportFolder {
    private static final DateTimeFormatter ID =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS").withZone(ZoneOffset.UTC);

    private final Path root;

    /** @param archive folder of the archive */
    public ImportFolder(Path archive) {
        this.root = archive.resolve("imports");
    }

    /**
     * One import.
     *
     * @param name of the file as it was sent
     * @param after last sequence of the ledger before it was brought in; -1 while it waits
     * @param summary what was brought in; empty while it waits
     * @param undone whether all of it was taken back
     */
    public record Entry(
            String id, SheetKind kind, String name, ImportChoices choices, long after, String summary, boolean undone) {
        public boolean waits() {
            return after < 0;
        }

        public Entry begun(long sequence) {
            return new Entry(id, kind, name, choices, sequence, summary, false);
        }

        public Entry with(ImportChoices chosen) {
            return new Entry(id, kind, name, chosen, after, summary, false);
        }

        public Entry over(String sentence) {
            return new Entry(id, kind, name, choices, after, sentence, false);
        }

        public Entry takenBack(String sentence) {
            return new Entry(id, kind, name, choices, after, sentence, true);
        }
    }

    /** An identifier that sorts by time. */
    public static String newId(Instant now) {
        return ID.format(now);
    }

    public Entry keep(Instant now, SheetKind kind, String name, InputStream bytes) throws IOException {
        Entry entry = new Entry(newId(now), kind, name, ImportChoices.USUAL, -1, "", false);
        Files.createDirectories(root.resolve(entry.id()));
        Files.copy(bytes, sheet(entry), StandardCopyOption.REPLACE_EXISTING);
        save(entry);
        return entry;
    }

    public Path sheet(Entry entry) {
        return root.resolve(entry.id()).resolve("sheet");
    }

    /** Verdicts of all rows, one a line. */
    public Path verdicts(Entry entry) {
        return root.resolve(entry.id()).resolve("verdicts");
    }

    public void save(Entry entry) throws IOException {
        Properties kept = new Properties();
        kept.setProperty("kind", entry.kind().toString());
        kept.setProperty("name", entry.name());
        kept.setProperty("update", Boolean.toString(entry.choices().update()));
        kept.setProperty("newPeople", Boolean.toString(entry.choices().newPeople()));
        kept.setProperty("undone", Boolean.toString(entry.undone()));
        kept.setProperty("after", Long.toString(entry.after()));
        kept.setProperty("summary", entry.summary());
        Path file = root.resolve(entry.id()).resolve("kept.properties");
        Path fresh = file.resolveSibling("kept.fresh");
        try (var out = Files.newBufferedWriter(fresh)) {
            kept.store(out, null);
        }
        Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    public Optional<Entry> find(String id) throws IOException {
        Path file = root.resolve(id).resolve("kept.properties");
        if (!id.matches("[0-9-]+") || !Files.isReadable(file)) {
            return Optional.empty();
        }
        Properties kept = new Properties();
        try (var in = Files.newBufferedReader(file)) {
            kept.load(in);
        }
        return SheetKind.of(kept.getProperty("kind"))
                .map(kind -> new Entry(
                        id,
                        kind,
                        kept.getProperty("name", ""),
                        new ImportChoices(
                                Boolean.parseBoolean(kept.getProperty("update", "true")),
                                Boolean.parseBoolean(kept.getProperty("newPeople", "false"))),
                        Long.parseLong(kept.getProperty("after", "-1")),
                        kept.getProperty("summary", ""),
                        Boolean.parseBoolean(kept.getProperty("undone", "false"))));
    }

    /** Newest first. */
    public List<Entry> all() throws IOException {
        List<Entry> all = new ArrayList<>();
        if (Files.isDirectory(root)) {
            try (DirectoryStream<Path> folders = Files.newDirectoryStream(root)) {
                for (Path each : folders) {
                    find(each.getFileName().toString()).ifPresent(all::add);
                }
            }
        }
        all.sort(Collections.reverseOrder(java.util.Comparator.comparing(Entry::id)));
        return all;
    }

    /** Deletes the sheet and its verdicts, which may name people; what was brought in stays known. */
    public void forgetSheet(Entry entry) throws IOException {
        Files.deleteIfExists(sheet(entry));
        Files.deleteIfExists(verdicts(entry));
    }

    public void discard(Entry entry) throws IOException {
        forgetSheet(entry);
        Files.deleteIfExists(root.resolve(entry.id()).resolve("kept.properties"));
        Files.deleteIfExists(root.resolve(entry.id()));
    }

    /** The choice made for these headings; null where none was or it cannot be read. */
    public @Nullable ColumnPlan remembered(Digest headings) {
        try {
            return ColumnPlan.fromJson(Files.readString(choice(headings)));
        } catch (IOException | IllegalArgumentException e) {
            return null;
        }
    }

    public void remember(Digest headings, ColumnPlan plan) throws IOException {
        Files.createDirectories(choice(headings).getParent());
        Files.writeString(choice(headings), plan.toJson());
    }

    private Path choice(Digest headings) {
        return root.resolve("columns").resolve(headings.hex() + ".json");
    }
}
