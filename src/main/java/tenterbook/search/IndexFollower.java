package tenterbook.search;

import java.io.IOException;
import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import org.apache.lucene.store.AlreadyClosedException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.archive.Dependents;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.search.index.OutsideFacets;
import tenterbook.words.Message;

/**
 * Keeps the live generation of an index up to the end of the ledger, on a thread of its own. Thread-safe.
 *
 * <p>A write only announces its sequence, so that writers never wait for the index and an import of many revisions is
 * indexed in batches.
 */
final class IndexFollower {
    private static final Logger LOG = LoggerFactory.getLogger(IndexFollower.class);

    /** From so many revisions behind, rebuilding on all processors is faster than following. */
    private static final int REBUILD_WHEN_BEHIND = 20_000;

    /** Indexing so many pieces again takes more than a moment; searches do not wait for it. */
    private static final int MANY_PIECES = 2000;

    private static final long COMMIT_AFTER_IDLE_MILLIS = 2000;

    /** After each failure in turn the next try comes later, up to this. */
    private static final Duration LONGEST_PAUSE = Duration.ofMinutes(1);

    private static final long LOOK_AGAIN_MILLIS = 50;

    private final Archive archive;
    private final OutsideFacets outside;
    /** Held while the live generation is written. */
    private final ReentrantLock indexing = new ReentrantLock();

    private final ReentrantLock rebuilding = new ReentrantLock();
    /** Notified after each change of what follows. */
    private final Object changed = new Object();

    /** Photographs whose cloth became known after their pieces were indexed; guarded by {@link #changed}. */
    private final Set<Digest> outlined = new HashSet<>();

    /** Whether such pieces are being indexed; guarded by {@link #changed}. */
    private boolean outlining;

    private final Duration firstPause;
    /** Before the next try after a failure; used by the thread alone, as is {@link #nextTry}. */
    private Duration pause;

    /** By {@link System#nanoTime}. */
    private long nextTry;

    private final Thread thread;
    private volatile Generation live;
    private volatile long announced;
    /** The sequence at which indexing last failed; searches do not wait for it. */
    private volatile long gaveUpAt = -1;

    /** Whether indexing takes long though few revisions are behind; searches do not wait for it. */
    private volatile boolean takesLong;

    private volatile boolean closed;

    private final Progress untilClosed = new Progress() {
        @Override
        public void at(long done, long total, String what) {}

        @Override
        public boolean cancelled() {
            return closed;
        }
    };

    /** @param firstPause before the next try after a failure, as where the disk is full */
    IndexFollower(Archive archive, OutsideFacets outside, Generation live, Duration firstPause) {
        this.archive = archive;
        this.outside = outside;
        this.live = live;
        this.firstPause = firstPause;
        this.pause = firstPause;
        this.thread = new Thread(this::follow, "search index");
        this.thread.setDaemon(true);
    }

    void start() {
        archive.ledger().follow(this::announce);
        announce(archive.ledger().lastSequence());
        archive.cloths().follow(this::outlined);
        thread.start();
    }

    private void outlined(Set<Digest> photos) {
        synchronized (changed) {
            outlined.addAll(photos);
            changed.notifyAll();
        }
    }

    /** The generation that searches are to use now. */
    Generation live() {
        return live;
    }

    /** How many revisions a generation has not seen yet. */
    long behind(Generation generation) {
        return Math.max(0, announced - generation.seen());
    }

    private void announce(long sequence) {
        synchronized (changed) {
            announced = Math.max(announced, sequence);
            changed.notifyAll();
        }
    }

    private void follow() {
        // Once at the start in any case, so that values from outside that were deleted are found again.
        boolean begun = false;
        while (!closed) {
            try {
                if ((!begun || live.seen() < announced || !live.writable()) && millisToNextTry() == 0) {
                    bringUp();
                    begun = true;
                    succeeded();
                    live.orderColours();
                } else if (anyOutlined() && live.writable()) {
                    indexOutlined();
                } else if (!rest() && live.uncommitted() && live.writable()) {
                    commit();
                }
            } catch (IOException | RuntimeException | Error e) {
                // An Error too: without this thread nothing is indexed until the next start.
                if (!closed) {
                    failed(e);
                }
            }
        }
    }

    private void failed(Throwable e) {
        if (pause.equals(firstPause)) {
            LOG.error("The search index could not be brought up to date; it is tried again until it can be", e);
        } else {
            LOG.info("The search index can still not be brought up to date: {}", e.toString());
        }
        nextTry = System.nanoTime() + pause.toNanos();
        Duration longer = pause.multipliedBy(2);
        pause = longer.compareTo(LONGEST_PAUSE) < 0 ? longer : LONGEST_PAUSE;
        gaveUpAt = announced;
        wake();
    }

    private void succeeded() {
        pause = firstPause;
        gaveUpAt = -1;
    }

    /** 0 unless the last try failed and nothing was written since. */
    private long millisToNextTry() {
        long nanos = gaveUpAt == announced ? nextTry - System.nanoTime() : 0;
        return nanos <= 0 ? 0 : 1 + nanos / 1_000_000;
    }

    private void bringUp() throws IOException {
        // A full disk or a deleted folder makes a generation unusable for writing, so a new one replaces it. After an
        // erasure, too: an old one still holds the person's data.
        if (announced - live.seen() >= REBUILD_WHEN_BEHIND
                || !live.writable()
                || archive.ledger().erasedAfter(live.seen())) {
            reindex(untilClosed);
            return;
        }
        try {
            setTakesLong(outside.takesLong());
            int other = outside.changedAfter(live.seen(), untilClosed).size();
            setTakesLong(takesLong || other >= MANY_PIECES);
            if (other >= MANY_PIECES && 2 * other > archive.ledger().count(Kinds.PIECE)) {
                reindex(untilClosed);
            } else {
                catchUp(untilClosed);
            }
        } finally {
            takesLong = false;
        }
    }

    private boolean anyOutlined() {
        synchronized (changed) {
            return !outlined.isEmpty();
        }
    }

    /** Indexes the pieces of photographs whose cloth is known by now; committed at once, since no revision tells of them. */
    private void indexOutlined() throws IOException {
        Set<Digest> photos;
        synchronized (changed) {
            photos = Set.copyOf(outlined);
            outlined.clear();
            outlining = true;
        }
        Set<String> pieces = Dependents.of(
                archive.ledger(),
                photos.stream().map(photo -> Kinds.PHOTO.key(photo.hex())).toList());
        indexing.lock();
        try {
            if (CatchUp.pieces(archive, outside, live, pieces, untilClosed)) {
                live.refresh(live.seen());
                live.commit();
                archive.cloths().taken(photos);
            }
        } finally {
            indexing.unlock();
            synchronized (changed) {
                outlining = false;
                changed.notifyAll();
            }
        }
    }

    private void setTakesLong(boolean now) {
        takesLong = now;
        if (now) {
            wake();
        }
    }

    private void catchUp(Progress progress) throws IOException {
        indexing.lock();
        try {
            CatchUp.run(archive, outside, live, progress);
        } catch (IOException | AlreadyClosedException e) {
            if (live.writable() || closed) {
                throw e;
            }
            LOG.warn("The search index could not be written; it is rebuilt", e);
        } finally {
            indexing.unlock();
        }
        if (!live.writable()) {
            reindex(progress);
        }
        wake();
    }

    private void wake() {
        synchronized (changed) {
            changed.notifyAll();
        }
    }

    /** Waits for a write; false where none came within {@value #COMMIT_AFTER_IDLE_MILLIS} ms. */
    private boolean rest() {
        synchronized (changed) {
            if (!closed
                    && (outlined.isEmpty() || !live.writable())
                    && (live.seen() >= announced || gaveUpAt == announced)) {
                try {
                    long longest = gaveUpAt == announced ? Math.max(1, millisToNextTry()) : COMMIT_AFTER_IDLE_MILLIS;
                    changed.wait(Math.min(longest, COMMIT_AFTER_IDLE_MILLIS));
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    closed = true;
                }
            }
            return closed || !outlined.isEmpty() || live.seen() < announced && gaveUpAt != announced;
        }
    }

    private void commit() throws IOException {
        indexing.lock();
        try {
            live.commit();
        } finally {
            indexing.unlock();
        }
    }

    /** Waits until all is indexed that has been written, the colours of every cloth too; false where that takes longer. */
    boolean await(Duration longest) {
        long end = System.nanoTime() + longest.toNanos();
        if (!await(longest, () -> false)) {
            return false;
        }
        synchronized (changed) {
            while (!closed && (archive.cloths().looking() || !outlined.isEmpty() || outlining)) {
                if (System.nanoTime() > end) {
                    return false;
                }
                try {
                    changed.wait(LOOK_AGAIN_MILLIS);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    return false;
                }
            }
        }
        return true;
    }

    /** As {@link #await}, but does not wait for work that takes long. */
    void awaitUnlessLong(Duration longest) {
        await(longest, () -> takesLong);
    }

    private boolean await(Duration longest, BooleanSupplier enough) {
        long wanted = announced;
        long end = System.nanoTime() + longest.toNanos();
        synchronized (changed) {
            while (live.seen() < wanted && !closed && gaveUpAt < wanted && !enough.getAsBoolean()) {
                long millis = (end - System.nanoTime()) / 1_000_000;
                if (millis <= 0) {
                    return false;
                }
                try {
                    changed.wait(millis);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    return false;
                }
            }
            return live.seen() >= wanted;
        }
    }

    /** Fills a new generation and replaces the live one by it. */
    void reindex(Progress progress) throws IOException {
        rebuilding.lock();
        try {
            Generation next = live.next();
            try {
                Rebuild.fill(archive, outside, next, progress);
                CatchUp.run(archive, outside, next, progress);
                replaceBy(next, progress);
            } catch (IOException | RuntimeException | Error e) {
                if (live != next) {
                    next.closeAndDelete();
                }
                throw e;
            }
        } finally {
            rebuilding.unlock();
        }
        wake();
    }

    private void replaceBy(Generation next, Progress progress) throws IOException {
        indexing.lock();
        try {
            CatchUp.run(archive, outside, next, progress);
            progress.orStop();
            if (closed) {
                throw new ArchiveProblem(
                        Message.of("search.trouble.closed-meanwhile").inEnglish());
            }
            next.commit();
            Generation old = live;
            live = next;
            old.closeAndDelete();
        } finally {
            indexing.unlock();
        }
    }

    /** Commits what is indexed and stops. A rebuild under way is given up. */
    void close() throws IOException {
        closed = true;
        wake();
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        indexing.lock();
        try {
            if (live.uncommitted() && live.writable()) {
                live.commit();
            }
            live.close();
        } finally {
            indexing.unlock();
        }
    }
}
