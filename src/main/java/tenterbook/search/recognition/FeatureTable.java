package tenterbook.search.recognition;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.imaging.DerivedTable;
import tenterbook.imaging.LookingBehind;
import tenterbook.imaging.Originals;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoMeasure;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;

/**
 * What is distinctive on each photograph of an archive: found behind the running program as photographs arrive, and kept in a
 * table that may be deleted. A table that is missing, damaged or of another finder is made anew from the originals. Nothing waits
 * for it. Thread-safe.
 */
final class FeatureTable implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(FeatureTable.class);
    private static final int BATCH = 1000;

    /** Nothing is read or looked at until so long after the start, or until somebody asks: a start is busy enough. */
    private static final int SECONDS_AFTER_START = 120;

    private static final String CREATE = """
            CREATE TABLE IF NOT EXISTS features (
                photo TEXT PRIMARY KEY, places BLOB NOT NULL, codes BLOB NOT NULL) WITHOUT ROWID""";

    private final Archive archive;
    private final Path photos;
    private final DerivedTable table;
    private final LookingBehind behind = new LookingBehind("photograph features", this::look);
    private final Preselection preselection = new Preselection();
    private final CompletableFuture<Void> wanted = new CompletableFuture<>();
    private final CompletableFuture<Void> begun;
    /** Whether the table was read, so that later revisions are followed. */
    private volatile boolean loaded;

    private long seen;

    /** Opens the table and follows the archive until {@link #close}. */
    static FeatureTable open(Archive archive) {
        Path file = archive.folder().derivedKept() ? archive.folder().derived().resolve("features.db") : null;
        FeatureTable table = new FeatureTable(archive, file);
        archive.ledger().follow(sequence -> table.follow());
        return table;
    }

    private FeatureTable(Archive archive, @Nullable Path file) {
        this.archive = archive;
        this.photos = archive.folder().photos();
        this.table = new DerivedTable(file, FeatureFinder.VERSION, "features", List.of(CREATE));
        this.begun = wanted.completeOnTimeout(null, SECONDS_AFTER_START, TimeUnit.SECONDS)
                .thenRunAsync(this::start);
    }

    private synchronized void start() {
        try {
            begin();
        } catch (JdbiException | IllegalArgumentException e) {
            LOG.warn("The table of features cannot be read and is made anew", e);
            table.startAnew();
            begin();
        }
        loaded = true;
        // What was written while the table was read.
        catchUp();
    }

    private void begin() {
        seen = archive.ledger().lastSequence();
        Map<Digest, Photo> all = new LinkedHashMap<>();
        archive.ledger().all(Kinds.PHOTO).stream().map(Saved::record).forEach(photo -> all.put(photo.digest(), photo));
        Set<Digest> kept = new HashSet<>();
        Set<Digest> gone = new HashSet<>();
        table.handle()
                .createQuery("SELECT photo, codes FROM features")
                .map((row, context) -> Map.entry(new Digest(row.getString(1)), Codes.of(row.getBytes(2))))
                .forEach(row -> {
                    (all.containsKey(row.getKey()) ? kept : gone).add(row.getKey());
                    preselection.put(row.getKey(), row.getValue());
                });
        gone.forEach(this::forget);
        behind.start(done -> {}, Set.of());
        behind.add(all.values().stream()
                .filter(photo -> photo.viewable() && !kept.contains(photo.digest()))
                .toList());
    }

    /** Somebody wants to know: the table is read now, and what was not looked at before is looked at from now on. */
    void hurry() {
        wanted.complete(null);
        begun.join();
    }

    private void follow() {
        if (loaded) {
            catchUp();
        }
    }

    /** Queues photographs recorded since, and forgets those that are no more. */
    private synchronized void catchUp() {
        for (List<Revision> batch = archive.ledger().after(seen, BATCH);
                behind.started() && !batch.isEmpty();
                batch = archive.ledger().after(seen, BATCH)) {
            List<String> changed = batch.stream()
                    .map(Revision::key)
                    .filter(key -> key.kind().equals(Kinds.PHOTO.name()))
                    .map(key -> key.id())
                    .distinct()
                    .toList();
            Map<String, Photo> now = archive.ledger().records(Kinds.PHOTO, changed);
            behind.add(now.values().stream()
                    .filter(photo -> photo.viewable() && !preselection.has(photo.digest()))
                    .toList());
            changed.stream().filter(id -> !now.containsKey(id)).map(Digest::new).forEach(this::forget);
            seen = batch.get(batch.size() - 1).sequence();
        }
    }

    private void forget(Digest photo) {
        table.handle().execute("DELETE FROM features WHERE photo = ?", photo.hex());
        preselection.remove(photo);
    }

    private void look(Photo photo) {
        try {
            Optional<Path> original = Originals.find(photos, photo.digest());
            Optional<PhotoMeasure.Opened> opened =
                    original.isEmpty() ? Optional.empty() : PhotoMeasure.opened(original.get());
            if (opened.isPresent()) {
                keep(photo.digest(), FeatureFinder.of(opened.get().pixels()));
            }
        } catch (IOException e) {
            LOG.warn("Photograph {} cannot be read", photo.digest().brief(), e);
        }
    }

    private synchronized void keep(Digest photo, PhotoFeatures features) {
        long[] codes = Codes.kept(features);
        table.handle()
                .execute(
                        "INSERT OR REPLACE INTO features (photo, places, codes) VALUES (?, ?, ?)",
                        photo.hex(),
                        features.bytes(),
                        Codes.bytes(codes));
        preselection.put(photo, codes);
    }

    Preselection preselection() {
        hurry();
        return preselection;
    }

    /** What is kept of these photographs; those not looked at yet are left out. */
    Map<Digest, PhotoFeatures> of(Collection<Digest> asked) {
        hurry();
        synchronized (this) {
            return kept(asked);
        }
    }

    private Map<Digest, PhotoFeatures> kept(Collection<Digest> asked) {
        Map<Digest, PhotoFeatures> found = new HashMap<>();
        for (Digest photo : asked) {
            try {
                table.handle()
                        .select("SELECT places FROM features WHERE photo = ?", photo.hex())
                        .map((row, context) -> PhotoFeatures.of(row.getBytes(1)))
                        .findOne()
                        .ifPresent(features -> found.put(photo, features));
            } catch (IllegalArgumentException e) {
                LOG.warn("The features of photograph {} cannot be read", photo.brief(), e);
            }
        }
        return found;
    }

    /** How many photographs are still to be looked at. */
    int left() {
        hurry();
        return behind.left();
    }

    @Override
    public void close() {
        wanted.cancel(false);
        begun.exceptionally(notBegun -> null).join();
        behind.close();
        synchronized (this) {
            table.close();
        }
    }
}
