package tenterbook.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.store.AlreadyClosedException;
import org.apache.lucene.store.FSDirectory;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.search.find.FoundNumbers;
import tenterbook.search.find.PieceSearch;
import tenterbook.search.find.SearchResult;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.index.PieceCard;
import tenterbook.search.query.Facet;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.QueryParameters;
import tenterbook.search.question.QuestionReader;
import tenterbook.search.suggest.Suggester;
import tenterbook.search.suggest.Suggestion;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * The search index of an archive. It follows the ledger by itself. Thread-safe.
 *
 * <p>A search that begins after a write has returned waits until that write is in the index, usually a few milliseconds.
 * Only when the index is {@value #FAR} revisions or more behind (just opened on an old index, a large import), or when
 * values from outside take long to find, the search is answered at once from what is indexed, and {@link
 * SearchResult#behind} states how much is missing.
 *
 * <p>A killed process loses nothing: each commit of the index holds the sequence up to which it is complete, and opening
 * continues from there. An index that is missing, damaged or of another format is rebuilt.
 */
public final class PieceIndex implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(PieceIndex.class);
    static final int FAR = 1000;

    private static final Duration LONGEST_WAIT = Duration.ofSeconds(20);
    private static final Duration PAUSE_AFTER_FAILURE = Duration.ofSeconds(2);

    private final Archive archive;
    private final OutsideFacets outside;
    private final Clock clock;
    private final IndexFollower follower;

    private PieceIndex(Archive archive, OutsideFacets outside, Clock clock, IndexFollower follower) {
        this.archive = archive;
        this.outside = outside;
        this.clock = clock;
        this.follower = follower;
    }

    /**
     * Opens the index of an archive, makes it where it is missing or unusable, and follows the ledger until {@link #close}.
     * Returns at once; what is still to be indexed is indexed while searches are answered.
     *
     * @param clock for questions such as 'last year'
     * @throws ArchiveProblem if the index folder cannot be written
     */
    public static PieceIndex open(Archive archive, OutsideFacets outside, Clock clock) {
        return open(archive, outside, clock, FSDirectory::open, PAUSE_AFTER_FAILURE);
    }

    /** @param pause before indexing is tried again after a failure, at first */
    static PieceIndex open(
            Archive archive, OutsideFacets outside, Clock clock, Generation.Opening opening, Duration pause) {
        Generation.Place place = new Generation.Place(archive.folder().index(), outside, opening);
        try {
            Generation live = Generation.newest(place).orElse(null);
            if (live != null && live.seen() > archive.ledger().lastSequence()) {
                LOG.warn(
                        "The search index is ahead of the ledger, as after restoring an older one; it will be rebuilt");
                live.closeAndDelete();
                live = null;
            }
            if (live == null) {
                live = Generation.create(place);
                live.commit();
            }
            PieceIndex index =
                    new PieceIndex(archive, outside, clock, new IndexFollower(archive, outside, live, pause));
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

    /** Without facets from outside. */
    static PieceIndex open(Archive archive) {
        return open(archive, OutsideFacets.NONE);
    }

    private static ArchiveProblem problem(String key, IOException e) {
        return new ArchiveProblem(
                Message.of(key, "why", String.valueOf(e.getMessage())).inEnglish(), e);
    }

    /** Every facet that is offered, in the order in which a page shows them. */
    public List<Facet> facets() {
        return Stream.concat(Facet.OWN.stream(), outside.facets().stream())
                .filter(Facet::offered)
                .sorted()
                .toList();
    }

    /**
     * Reads the parameters of an address. Unknown ones are ignored, blank ones count as absent.
     *
     * @throws IllegalArgumentException with a sentence that names the parameter, what was expected and what was found
     */
    public PieceQuery query(Map<String, List<String>> parameters) {
        return QueryParameters.read(parameters, facets());
    }

    /** The last revision that searches see. */
    public long sequence() {
        return follower.live().seen();
    }

    /**
     * Waits until searches see everything that has been written.
     *
     * @return false if that took longer than {@code longest}
     */
    public boolean await(Duration longest) {
        return follower.await(longest);
    }

    private interface Work<R> {
        R on(IndexSearcher searcher, Generation generation) throws IOException;
    }

    private <R> R read(Work<R> work) {
        if (follower.behind(follower.live()) < FAR) {
            follower.awaitUnlessLong(LONGEST_WAIT);
        }
        while (true) {
            Generation generation = follower.live();
            try {
                IndexSearcher searcher = generation.acquire();
                try {
                    return work.on(searcher, generation);
                } finally {
                    generation.release(searcher);
                }
            } catch (AlreadyClosedException e) {
                if (generation == follower.live()) {
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
        QuestionReader.Background background = background(query);
        return read((searcher, generation) -> new PieceSearch(searcher, generation.columns())
                .run(query, background, started, follower.behind(generation)));
    }

    private QuestionReader.Background background(PieceQuery query) {
        return new QuestionReader.Background(
                this::today,
                query.text().isEmpty() ? Map.of() : archive.ledger().ownWords().means());
    }

    /** How many pieces a search finds now; cheaper than searching. */
    public long count(PieceQuery query) {
        return read((searcher, generation) ->
                new PieceSearch(searcher, generation.columns()).count(query, background(query)));
    }

    /**
     * The pieces that a search finds, by number, in its order and at one moment, whatever its page.
     *
     * @param most at most so many
     */
    public FoundNumbers numbers(PieceQuery query, int most) {
        return read((searcher, generation) -> new PieceSearch(searcher, generation.columns())
                .numbers(query, background(query), most, follower.behind(generation)));
    }

    /** What a text would be read as in a question, by the trade's words and the archive's names alone. */
    public <R> R reading(Function<QuestionReader, R> work) {
        return read((searcher, generation) -> work.apply(new PieceSearch(searcher, generation.columns())
                .reader(new QuestionReader.Background(this::today, Map.of()))));
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
     * Suggestions for {@code typed}: from the start of any word, whatever the accents, with one or two letters wrong.
     *
     * @param limit at most so many
     */
    public List<Suggestion> suggest(String typed, int limit) {
        return read((searcher, generation) -> Suggester.of(searcher, typed, limit));
    }

    /**
     * Builds a new index, which then replaces the old one. The old one answers searches meanwhile.
     *
     * @throws Progress.Cancelled if asked to stop; the old index stays
     * @throws ArchiveProblem if it cannot be written; the old index stays
     */
    public void reindex(Progress progress) {
        try {
            follower.reindex(progress);
        } catch (IOException e) {
            throw problem("search.trouble.rebuilt", e);
        }
    }

    /**
     * Compares the index with the ledger: pieces that are missing, too many or stale, and damaged files. Where they cannot
     * be compared, that is a finding, so that what other checks found is still shown.
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
        try {
            follower.close();
        } catch (IOException e) {
            throw problem("search.trouble.closed", e);
        }
    }
}
