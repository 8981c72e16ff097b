package tenterbook.imaging;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.measure.Digest;

/**
 * Where the cloth is on each photograph, and its colours: looked for once, on arrival or when it is first asked for, and kept in a
 * table that may be deleted. An outline that a person drew stands in the photograph's record and goes before what the program
 * finds. A table that is missing, damaged or of another finder is made anew. Safe for many threads.
 */
public final class ClothTable implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(ClothTable.class);
    private final Path photos;
    private final ClothRows rows;
    /** Where a person marked cards on a photograph; they are no cloth. */
    private final Function<Digest, List<Region>> marked;

    private final LookingBehind behind = new LookingBehind("cloth outlines", this::of);

    /** @param marked where a person marked cards on a photograph; empty where nobody did */
    public ClothTable(ArchiveFolder folder, Function<Digest, List<Region>> marked) {
        this(folder.photos(), folder.derivedKept() ? folder.derived().resolve("cloth.db") : null, marked);
    }

    /**
     * @param photos where the originals lie
     * @param file the table; null for one in memory, where nothing may be written
     */
    public ClothTable(Path photos, @Nullable Path file) {
        this(photos, file, photo -> List.of());
    }

    private ClothTable(Path photos, @Nullable Path file, Function<Digest, List<Region>> marked) {
        this.photos = photos;
        this.rows = new ClothRows(file);
        this.marked = marked;
    }

    /** The cloth on each of these photographs; looked for now where it is not known. */
    public Map<Digest, SeenCloth> of(Collection<Photo> asked) {
        Map<Digest, SeenCloth> found = new HashMap<>();
        for (Photo photo : asked) {
            if (photo.viewable()) {
                SeenCloth kept = kept(photo);
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
            SeenCloth kept = photo.viewable() ? kept(photo) : SeenCloth.NONE;
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
            photos.forEach(photo -> rows.await(photo.digest()));
            behind.add(photos);
        }
        return true;
    }

    /**
     * From now on outlines are found behind. The follower is called on a thread of this table's, with photographs of which
     * {@link #known} did not know the cloth and now does; also with those of before, of which it has not said {@link #taken}.
     */
    public synchronized void follow(Consumer<Set<Digest>> heard) {
        behind.start(heard, rows.waiting());
    }

    /** Whoever follows has taken over what is known of these photographs. */
    public synchronized void taken(Set<Digest> photos) {
        rows.taken(photos.stream().filter(photo -> !behind.waits(photo)).toList());
    }

    /** Whether photographs are still to be looked at behind. */
    public boolean looking() {
        return behind.looking();
    }

    /** How far it has come with looking behind. */
    public LookingBehind.Looking progress() {
        return behind.progress();
    }

    public SeenCloth of(Photo photo) {
        return of(List.of(photo)).get(photo.digest());
    }

    private @Nullable SeenCloth kept(Photo photo) {
        return rows.kept(photo.digest(), ClothRows.key(photo.cloth(), marked.apply(photo.digest())));
    }

    /** Looks for the cloth on a picture that is at hand, as {@link PhotoMeasure} opens it, and keeps what is found. */
    void look(Digest photo, Pixels picture) {
        String key = ClothRows.key(List.of(), List.of());
        if (rows.kept(photo, key) == null) {
            rows.keep(photo, key, SeenCloth.look(picture, List.of(), List.of()));
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
            List<Region> cards = marked.apply(photo.digest());
            SeenCloth seen = SeenCloth.look(opened.pixels(), photo.cloth(), cards);
            rows.keep(photo.digest(), ClothRows.key(photo.cloth(), cards), seen);
            return seen;
        } catch (IOException e) {
            LOG.warn(
                    "The cloth on photograph {} cannot be looked for",
                    photo.digest().brief(),
                    e);
            return SeenCloth.NONE;
        }
    }

    /** @param drawn the outline in the photograph's record; empty for what the program found */
    public void keep(Digest photo, List<Corner> drawn, SeenCloth seen) {
        rows.keep(photo, ClothRows.key(drawn, List.of()), seen);
    }

    @Override
    public void close() {
        behind.close();
        rows.close();
    }
}
