package tenterbook.imaging;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.palette.Palette;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.space.Lab;
import tenterbook.imaging.cloth.ClothFinder;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.imaging.cloth.ClothOutline.Edge;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.measure.Digest;

/**
 * Where the cloth is on each photograph, and its colours: looked for once, on arrival or when it is first asked for, and kept in a
 * table that may be deleted. An outline that a person drew stands in the photograph's record and goes before what the program
 * finds. A table that is missing, damaged or of another finder is made anew. Safe for many threads.
 */
public final class ClothTable implements AutoCloseable {
    /** So many outlines, at most, are found before whoever follows hears of them. */
    private static final int TOGETHER = 8;

    private static final Logger LOG = LoggerFactory.getLogger(ClothTable.class);
    private static final String DRAWN_BY_NOBODY = "";
    private static final String CREATE = """
            CREATE TABLE IF NOT EXISTS seen (
                photo TEXT NOT NULL, drawn TEXT NOT NULL, edge TEXT NOT NULL, measured REAL NOT NULL,
                outline TEXT NOT NULL, palette TEXT NOT NULL,
                PRIMARY KEY (photo, drawn)) WITHOUT ROWID""";

    /** Photographs that somebody was told nothing of yet. */
    private static final String WAITING = "CREATE TABLE IF NOT EXISTS waiting (photo TEXT PRIMARY KEY) WITHOUT ROWID";

    private final Path photos;
    /** Null where nothing may be written: then it is kept in memory. */
    private final @Nullable Path file;

    /** Photographs to be looked at behind, in order. */
    private final Map<Digest, Photo> queue = new LinkedHashMap<>();

    /** Hears which photographs were looked at; null where nobody does, and then nothing is looked for behind. */
    private @Nullable Consumer<Set<Digest>> follower;

    private @Nullable Thread looking;
    private boolean busy;
    private @Nullable Handle open;

    public ClothTable(ArchiveFolder folder) {
        this(folder.photos(), folder.readOnly() ? null : folder.derived().resolve("cloth.db"));
    }

    /**
     * @param photos where the originals lie
     * @param file the table; null for one in memory
     */
    public ClothTable(Path photos, @Nullable Path file) {
        this.photos = photos;
        this.file = file;
    }

    /** The cloth on each of these photographs; looked for now where it is not known. */
    public Map<Digest, SeenCloth> of(Collection<Photo> asked) {
        Map<Digest, SeenCloth> found = new HashMap<>();
        for (Photo photo : asked) {
            if (photo.viewable()) {
                SeenCloth kept = kept(photo.digest(), text(photo.cloth()));
                found.put(photo.digest(), kept == null ? lookedFor(photo) : kept);
            } else {
                found.put(photo.digest(), SeenCloth.NONE);
            }
        }
        return found;
    }

    /**
     * The cloth on each of these photographs where it is known. The others are looked at behind, and whoever follows hears of them;
     * where nobody does, they are looked at now.
     */
    public Map<Digest, SeenCloth> known(Collection<Photo> asked) {
        Map<Digest, SeenCloth> found = new HashMap<>();
        List<Photo> others = new ArrayList<>();
        for (Photo photo : asked) {
            SeenCloth kept = photo.viewable() ? kept(photo.digest(), text(photo.cloth())) : SeenCloth.NONE;
            if (kept == null) {
                others.add(photo);
            } else {
                found.put(photo.digest(), kept);
            }
        }
        if (!others.isEmpty() && !queued(others)) {
            found.putAll(of(others));
        }
        others.forEach(photo -> found.putIfAbsent(photo.digest(), SeenCloth.NOT_YET));
        return found;
    }

    private synchronized boolean queued(List<Photo> photos) {
        if (follower == null) {
            return false;
        }
        for (Photo photo : photos) {
            handle().execute(
                            "INSERT OR IGNORE INTO waiting (photo) VALUES (?)",
                            photo.digest().hex());
            queue.put(photo.digest(), photo);
        }
        notifyAll();
        return true;
    }

    /**
     * From now on outlines are found behind. The follower is called on a thread of this table's, with photographs of which
     * {@link #known} did not know the cloth and now does; also with those of before, of which it has not said {@link #taken}.
     */
    public synchronized void follow(Consumer<Set<Digest>> heard) {
        follower = heard;
        Set<Digest> before = handle().createQuery("SELECT photo FROM waiting")
                .mapTo(String.class)
                .map(Digest::new)
                .collect(Collectors.toSet());
        looking = new Thread(() -> lookBehind(heard, before), "cloth outlines");
        looking.setDaemon(true);
        looking.start();
    }

    /** Whoever follows has taken over what is known of these photographs. */
    public synchronized void taken(Set<Digest> photos) {
        for (Digest photo : photos) {
            if (!queue.containsKey(photo)) {
                handle().execute("DELETE FROM waiting WHERE photo = ?", photo.hex());
            }
        }
    }

    /** Whether photographs are still to be looked at behind. */
    public synchronized boolean looking() {
        return busy || !queue.isEmpty();
    }

    private void lookBehind(Consumer<Set<Digest>> heard, Set<Digest> before) {
        Set<Digest> found = new HashSet<>(before);
        try {
            for (Photo next = next(found, heard); next != null; next = next(found, heard)) {
                try {
                    of(next);
                } catch (RuntimeException | Error e) {
                    LOG.warn(
                            "The cloth on photograph {} cannot be looked for",
                            next.digest().brief(),
                            e);
                }
                found.add(next.digest());
            }
        } catch (RuntimeException e) {
            LOG.error("No more outlines are looked for until the next start", e);
        } finally {
            synchronized (this) {
                busy = false;
                queue.clear();
            }
        }
    }

    /** Waits for a photograph; null when the table is closed. Tells the follower what was found before it waits. */
    private @Nullable Photo next(Set<Digest> found, Consumer<Set<Digest>> heard) {
        if (!found.isEmpty() && (found.size() >= TOGETHER || nothingQueued())) {
            heard.accept(Set.copyOf(found));
            found.clear();
        }
        synchronized (this) {
            busy = false;
            while (queue.isEmpty() && follower != null) {
                try {
                    wait();
                } catch (InterruptedException e) {
                    return null;
                }
            }
            if (follower == null) {
                return null;
            }
            Photo next = queue.remove(queue.keySet().iterator().next());
            busy = true;
            return next;
        }
    }

    private synchronized boolean nothingQueued() {
        return queue.isEmpty();
    }

    public SeenCloth of(Photo photo) {
        return of(List.of(photo)).get(photo.digest());
    }

    /** Looks for the cloth on a picture that is at hand, as {@link PhotoMeasure} opens it, and keeps what is found. */
    void look(Digest photo, Pixels picture) {
        if (kept(photo, DRAWN_BY_NOBODY) == null) {
            LabRaster raster = LabRaster.of(picture, ClothFinder.LONG_EDGE);
            keep(photo, List.of(), seen(raster, ClothFinder.find(raster)));
        }
    }

    private SeenCloth lookedFor(Photo photo) {
        try {
            Path original = Originals.find(photos, photo.digest()).orElse(null);
            PhotoMeasure.Opened opened =
                    original == null ? null : PhotoMeasure.opened(original).orElse(null);
            if (opened == null) {
                return SeenCloth.NONE;
            }
            LabRaster raster = LabRaster.of(opened.pixels(), ClothFinder.LONG_EDGE);
            SeenCloth seen = seen(
                    raster, photo.cloth().isEmpty() ? ClothFinder.find(raster) : ClothOutline.drawn(photo.cloth()));
            keep(photo.digest(), photo.cloth(), seen);
            return seen;
        } catch (IOException e) {
            LOG.warn(
                    "The cloth on photograph {} cannot be looked for",
                    photo.digest().brief(),
                    e);
            return SeenCloth.NONE;
        }
    }

    private static SeenCloth seen(LabRaster raster, ClothOutline outline) {
        return new SeenCloth(
                outline, outline.edge().found() ? Palette.of(raster, new Region(outline.corners())) : List.of());
    }

    private synchronized @Nullable SeenCloth kept(Digest photo, String drawn) {
        return handle().select(
                        "SELECT edge, measured, outline, palette FROM seen WHERE photo = ? AND drawn = ?",
                        photo.hex(),
                        drawn)
                .map((row, context) -> new SeenCloth(
                        new ClothOutline(Edge.valueOf(row.getString(1)), corners(row.getString(3)), row.getDouble(2)),
                        colours(row.getString(4))))
                .findOne()
                .orElse(null);
    }

    /** @param drawn the outline in the photograph's record; empty for what the program found */
    public synchronized void keep(Digest photo, List<Corner> drawn, SeenCloth seen) {
        handle().execute(
                        "INSERT OR REPLACE INTO seen (photo, drawn, edge, measured, outline, palette)"
                                + " VALUES (?, ?, ?, ?, ?, ?)",
                        photo.hex(),
                        text(drawn),
                        seen.outline().edge().name(),
                        seen.outline().measured(),
                        text(seen.outline().corners()),
                        palette(seen.palette()));
    }

    private Handle handle() {
        if (open == null) {
            try {
                open = opened();
            } catch (JdbiException e) {
                LOG.warn("The table of cloth outlines cannot be read and is made anew", e);
                delete();
                open = opened();
            }
        }
        return open;
    }

    private Handle opened() {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.NORMAL);
        config.setBusyTimeout(10_000);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + (file == null ? ":memory:" : file.toAbsolutePath()));
        if (file != null) {
            try {
                Files.createDirectories(file.getParent());
            } catch (IOException e) {
                LOG.warn("The folder {} cannot be made", file.getParent(), e);
            }
        }
        Handle handle = Jdbi.open(source);
        int version =
                handle.createQuery("PRAGMA user_version").mapTo(Integer.class).one();
        if (version != ClothFinder.VERSION) {
            handle.execute("DROP TABLE IF EXISTS seen");
        }
        handle.execute(CREATE);
        handle.execute(WAITING);
        handle.execute("PRAGMA user_version = " + ClothFinder.VERSION);
        return handle;
    }

    private void delete() {
        try {
            for (String end : List.of("", "-wal", "-shm")) {
                Files.deleteIfExists(file.resolveSibling(file.getFileName() + end));
            }
        } catch (IOException e) {
            LOG.warn("The table {} cannot be deleted", file, e);
        }
    }

    private static String text(List<Corner> corners) {
        StringJoiner text = new StringJoiner(" ");
        corners.forEach(corner -> text.add(corner.x() + "," + corner.y()));
        return text.toString();
    }

    private static List<Corner> corners(String text) {
        return numbers(text).stream().map(n -> new Corner(n[0], n[1])).toList();
    }

    private static String palette(List<PaletteColour> palette) {
        StringJoiner text = new StringJoiner(" ");
        palette.forEach(each -> text.add(each.colour().lightness() + ","
                + each.colour().a() + "," + each.colour().b() + "," + each.share()));
        return text.toString();
    }

    private static List<PaletteColour> colours(String text) {
        return numbers(text).stream()
                .map(n -> new PaletteColour(new Lab(n[0], n[1], n[2]), n[3]))
                .toList();
    }

    private static List<double[]> numbers(String text) {
        List<double[]> numbers = new ArrayList<>();
        for (String group : text.isEmpty() ? new String[0] : text.split(" ")) {
            String[] each = group.split(",");
            double[] read = new double[each.length];
            for (int i = 0; i < read.length; i++) {
                read[i] = Double.parseDouble(each[i]);
            }
            numbers.add(read);
        }
        return numbers;
    }

    @Override
    public void close() {
        Thread worker;
        synchronized (this) {
            worker = looking;
            follower = null;
            queue.clear();
            notifyAll();
        }
        if (worker != null) {
            try {
                worker.join();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
        closeTable();
    }

    private synchronized void closeTable() {
        if (open != null) {
            open.close();
            open = null;
        }
    }
}
