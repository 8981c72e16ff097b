package tenterbook.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.ReentrantLock;
import java.util.stream.Stream;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.store.AlreadyClosedException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.search.find.PieceSearch;
import tenterbook.search.find.SearchResult;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.index.PieceCard;
import tenterbook.search.query.Facet;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.QueryParameters;
import tenterbook.search.suggest.Suggester;
import tenterbook.search.suggest.Suggestion;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * The search index of an archive. Follows the ledger by itself; safe for many threads.
 *
 * <p>A write only leaves word that there is something new, so that writers never wait for the index and an import of many
 * acts is indexed in batches. One thread of our own indexes. A search that begins after a write has returned waits until
 * that write is in the index, usually a few milliseconds. Only when the index is {@value #FAR} revisions or more behind
 * (just opened on an old index, a great import), or when values from outside take long to find, does it answer at once from
 * what there is, and {@link SearchResult#behind} says so.
 *
 * <p>A killed process loses nothing: each commit of the index holds the sequence it is good for, and opening goes on from
 * there. An index that is missing, damaged or of another format is rebuilt.
 */
public final class PieceIndex implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(PieceIndex.class);
    static final int FAR = 1000;
    /** So far behind, building anew on all processors is quicker than following. */
    private static final int REBUILD_WHEN_BEHIND = 20_000;
    /** To index so many pieces whose values from outside are other ones is no matter of a moment; searches do not wait for it. */
    private static final int MANY_PIECES = 2000;

    private static final Duration LONGEST_WAIT = Duration.ofSeconds(20);
    private static final long COMMIT_AFTER_IDLE_MILLIS = 2000;

    private final Archive archive;
    private final OutsideFacets outside;
    private final Clock clock;
    /** Held by whoever writes to the live generation. */
    private final ReentrantLock indexing = new ReentrantLock();

    private final ReentrantLock rebuilding = new ReentrantLock();
    private final Object news = new Object();
    private final Thread follower;
    private volatile Generation live;
    private volatile long announced;
    /** The sequence at which indexing last failed; searches do not wait for it again. */
    private volatile long gaveUpAt = -1;

    /** Whether much is being found and indexed though few revisions are behind; searches do not wait for that. */
    private volatile boolean takesLong;

    private volatile boolean closed;

    private PieceIndex(Archive archive, OutsideFacets outside, Clock clock, Generation live) {
        this.archive = archive;
        this.outside = outside;
        this.clock = clock;
        this.live = live;
        this.follower = new Thread(this::follow, "search index");
        this.follower.setDaemon(true);
    }

    /**
     * Opens the index of an archive, making it where it is missing or unfit, and follows the ledger until {@link #close}.
     * Returns at once; where more than a little is to be indexed, that goes on behind the searches.
     *
     * @param clock for questions such as 'last year'
     * @throws ArchiveProblem if the index folder cannot be written
     */
    public static PieceIndex open(Archive archive, OutsideFacets outside, Clock clock) {
        try {
            Generation live =
                    Generation.newest(archive.folder().index(), outside).orElse(null);
            if (live != null && live.seen() > archive.ledger().lastSequence()) {
                LOG.warn(
                        "The search index is ahead of the ledger, as after restoring an older one; it will be rebuilt");
                live.closeAndDelete();
                live = null;
            }
            if (live == null) {
                live = Generation.create(archive.folder().index(), outside);
                live.commit();
            }
            PieceIndex index = new PieceIndex(archive, outside, clock, live);
            archive.ledger().follow(index::announce);
            index.announce(archive.ledger().lastSequence());
            index.follower.start();
            return index;
        } catch (IOException e) {
            throw problem("search.trouble.opened", e);
        }
    }

    /** By the computer's clock. */
    public static PieceIndex open(Archive archive, OutsideFacets outside) {
        return open(archive, outside, Clock.systemUTC());
    }

    /** With its own facets alone. */
    static PieceIndex open(Archive archive) {
        return open(archive, OutsideFacets.NONE);
    }

    private static ArchiveProblem problem(String key, IOException e) {
        return new ArchiveProblem(
                Message.of(key, "why", String.valueOf(e.getMessage())).inEnglish(), e);
    }

    private void announce(long sequence) {
        synchronized (news) {
            announced = Math.max(announced, sequence);
            news.notifyAll();
        }
    }

    private void follow() {
        // Once at the beginning, so that values from outside that were deleted are found again.
        boolean begun = false;
        while (!closed) {
            try {
                if ((!begun || live.seen() < announced || !live.writable()) && gaveUpAt != announced) {
                    begun = true;
                    bringUp();
                } else if (!rest() && live.uncommitted() && live.writable()) {
                    commit();
                }
            } catch (IOException | RuntimeException | Error e) {
                // An Error too: without this thread nothing would be indexed any more until the next start.
                if (!closed) {
                    LOG.error("The search index could not be brought up to date; the next write tries again", e);
                    gaveUpAt = announced;
                    wake();
                }
            }
        }
    }

    private void bringUp() throws IOException {
        // A full disk or a deleted folder ends a generation for good, so another takes its place; and only a new one
        // holds
        // nothing of a person who was erased.
        if (announced - live.seen() >= REBUILD_WHEN_BEHIND
                || !live.writable()
                || archive.ledger().erasedAfter(live.seen())) {
            reindex(new UntilClosed());
            return;
        }
        try {
            notWaited(outside.takesLong());
            int changed = outside.changedAfter(live.seen(), new UntilClosed()).size();
            notWaited(takesLong || changed >= MANY_PIECES);
            if (changed >= MANY_PIECES && 2 * changed > archive.ledger().count(Kinds.PIECE)) {
                reindex(new UntilClosed());
            } else {
                catchUp(new UntilClosed());
            }
        } finally {
            takesLong = false;
        }
    }

    private void notWaited(boolean now) {
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
            LOG.warn("The search index could not be written; building it anew", e);
        } finally {
            indexing.unlock();
        }
        if (!live.writable()) {
            reindex(progress);
        }
        wake();
    }

    private final class UntilClosed implements Progress {
        @Override
        public void at(long done, long total, String what) {}

        @Override
        public boolean cancelled() {
            return closed;
        }
    }

    private void wake() {
        synchronized (news) {
            news.notifyAll();
        }
    }

    /** Waits for news; false where none came for a while. */
    private boolean rest() {
        synchronized (news) {
            if (!closed && (live.seen() >= announced || gaveUpAt == announced)) {
                try {
                    news.wait(COMMIT_AFTER_IDLE_MILLIS);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    closed = true;
                }
            }
            return closed || live.seen() < announced && gaveUpAt != announced;
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

    /** What pieces can be narrowed by, in the order the page shows it. */
    public List<Facet> facets() {
        return Stream.concat(Facet.OWN.stream(), outside.facets().stream())
                .sorted()
                .toList();
    }

    /**
     * Reads the parameters of an address; unknown ones are passed over, blank ones count as absent.
     *
     * @throws IllegalArgumentException with a sentence that names the parameter, what was expected and what was found
     */
    public PieceQuery query(Map<String, List<String>> parameters) {
        return QueryParameters.read(parameters, facets());
    }

    /** The last revision that searches see. */
    public long sequence() {
        return live.seen();
    }

    /**
     * Waits until searches see everything that has been written.
     *
     * @return false if that took longer than {@code longest}
     */
    public boolean await(Duration longest) {
        return await(longest, false);
    }

    private boolean await(Duration longest, boolean unlessLong) {
        long wanted = announced;
        long end = System.nanoTime() + longest.toNanos();
        synchronized (news) {
            while (live.seen() < wanted && !closed && gaveUpAt < wanted && !(unlessLong && takesLong)) {
                long millis = (end - System.nanoTime()) / 1_000_000;
                if (millis <= 0) {
                    return false;
                }
                try {
                    news.wait(millis);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    return false;
                }
            }
            return live.seen() >= wanted;
        }
    }

    private interface Work<R> {
        R on(IndexSearcher searcher, Generation generation) throws IOException;
    }

    private <R> R read(Work<R> work) {
        if (announced - live.seen() < FAR) {
            await(LONGEST_WAIT, true);
        }
        while (true) {
            Generation generation = live;
            try {
                IndexSearcher searcher = generation.acquire();
                try {
                    return work.on(searcher, generation);
                } finally {
                    generation.release(searcher);
                }
            } catch (AlreadyClosedException e) {
                if (generation == live) {
                    throw e;
                }
            } catch (IOException e) {
                throw problem("search.trouble.read", e);
            } catch (UncheckedIOException e) {
                throw problem("search.trouble.read", e.getCause());
            }
        }
    }

    /** Searches; never fails on what a person typed. */
    public SearchResult search(PieceQuery query) {
        long started = System.nanoTime();
        return read((searcher, generation) -> new PieceSearch(searcher, generation.columns())
                .run(query, this::today, started, Math.max(0, announced - generation.seen())));
    }

    private LocalDate today() {
        return LocalDate.now(clock.withZone(archive.conventions().zone()));
    }

    /** Every piece made with a board pair, earliest first, undated last, then by number. */
    public List<PieceCard> byBoard(String boardId) {
        return byBoard(boardId, 0, Integer.MAX_VALUE);
    }

    /**
     * A part of {@link #byBoard(String)}.
     *
     * @param from the first shown, from 0
     * @param size at most so many
     */
    public List<PieceCard> byBoard(String boardId, int from, int size) {
        if (from < 0 || size < 0) {
            throw Refusal.of("search.part", "board", boardId, "from", from, "size", size);
        }
        return read(
                (searcher, generation) -> new PieceSearch(searcher, generation.columns()).byBoard(boardId, from, size));
    }

    /** How many pieces {@link #byBoard(String)} gives. */
    public int countByBoard(String boardId) {
        return read((searcher, generation) -> new PieceSearch(searcher, generation.columns()).countByBoard(boardId));
    }

    /**
     * What {@code typed} may mean, from the start of any word, forgiving accents and a wrong letter or two.
     *
     * @param limit at most so many
     */
    public List<Suggestion> suggest(String typed, int limit) {
        return read((searcher, generation) -> Suggester.of(searcher, typed, limit));
    }

    /**
     * Builds the index anew and then puts it in the place of the old one, which serves meanwhile.
     *
     * @throws Progress.Cancelled if asked to stop; the old index stays
     * @throws ArchiveProblem if it cannot be written; the old index stays
     */
    public void reindex(Progress progress) {
        rebuilding.lock();
        try {
            Generation next = live.next(archive.folder().index(), outside);
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
        } catch (IOException e) {
            throw problem("search.trouble.rebuilt", e);
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

    /**
     * Compares the index with the ledger: pieces that are missing, too many or stale, and damaged files. Where the two
     * cannot be compared, that is the finding: what other checks found must still be shown.
     *
     * @throws Progress.Cancelled if asked to stop
     */
    public List<Finding> check(Progress progress) {
        try {
            Map<String, Finding> first = compared(progress);
            return first.isEmpty() ? List.of() : IndexCheck.stillThere(first, compared(progress));
        } catch (Progress.Cancelled e) {
            throw e;
        } catch (RuntimeException e) {
            return List.of(IndexCheck.finding(
                    Message.of("search.check.index"),
                    Message.of("search.check.not-compared", "why", String.valueOf(e.getMessage()))));
        }
    }

    private Map<String, Finding> compared(Progress progress) {
        await(LONGEST_WAIT);
        return read((searcher, generation) -> IndexCheck.run(archive, outside, searcher, progress));
    }

    /** Commits what is indexed and stops following. A rebuild under way is given up. */
    @Override
    public void close() {
        closed = true;
        wake();
        try {
            follower.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        indexing.lock();
        try {
            if (live.uncommitted() && live.writable()) {
                live.commit();
            }
            live.close();
        } catch (IOException e) {
            throw problem("search.trouble.closed", e);
        } finally {
            indexing.unlock();
        }
    }
}
