package tenterbook.imaging;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
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
    private final DerivedTable table;
    private final LookingBehind behind = new LookingBehind("cloth outlines", this::of);

    public ClothTable(ArchiveFolder folder) {
        this(folder.photos(), folder.readOnly() ? null : folder.derived().resolve("cloth.db"));
    }

    /**
     * @param photos where the originals lie
     * @param file the table; null for one in memory
     */
    public ClothTable(Path photos, @Nullable Path file) {
        this.photos = photos;
        this.table = new DerivedTable(file, ClothFinder.VERSION, "seen", List.of(CREATE, WAITING));
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

    private boolean queued(List<Photo> photos) {
        if (!behind.started()) {
            return false;
        }
        synchronized (this) {
            String insert = "INSERT OR IGNORE INTO waiting (photo) VALUES (?)";
            photos.forEach(
                    photo -> table.handle().execute(insert, photo.digest().hex()));
            behind.add(photos);
        }
        return true;
    }

    /**
     * From now on outlines are found behind. The follower is called on a thread of this table's, with photographs of which
     * {@link #known} did not know the cloth and now does; also with those of before, of which it has not said {@link #taken}.
     */
    public synchronized void follow(Consumer<Set<Digest>> heard) {
        behind.start(
                heard,
                table.handle()
                        .createQuery("SELECT photo FROM waiting")
                        .mapTo(String.class)
                        .map(Digest::new)
                        .collect(Collectors.toSet()));
    }

    /** Whoever follows has taken over what is known of these photographs. */
    public synchronized void taken(Set<Digest> photos) {
        for (Digest photo : photos) {
            if (!behind.waits(photo)) {
                table.handle().execute("DELETE FROM waiting WHERE photo = ?", photo.hex());
            }
        }
    }

    /** Whether photographs are still to be looked at behind. */
    public boolean looking() {
        return behind.looking();
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
        return table.handle()
                .select(
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
        table.handle()
                .execute(
                        "INSERT OR REPLACE INTO seen (photo, drawn, edge, measured, outline, palette)"
                                + " VALUES (?, ?, ?, ?, ?, ?)",
                        photo.hex(),
                        text(drawn),
                        seen.outline().edge().name(),
                        seen.outline().measured(),
                        text(seen.outline().corners()),
                        palette(seen.palette()));
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
        behind.close();
        synchronized (this) {
            table.close();
        }
    }
}
