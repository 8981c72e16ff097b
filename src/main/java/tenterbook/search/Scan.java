package tenterbook.search;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.LeafCollector;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.Scorer;
import org.apache.lucene.search.TopDocs;
import org.apache.lucene.search.TopFieldCollector;
import org.apache.lucene.search.TopFieldCollectorManager;
import org.apache.lucene.search.Weight;
import org.apache.lucene.util.Bits;

/**
 * One pass over the pieces: words by Lucene, everything else by the columns, hits and all facet counts together.
 *
 * <p>A piece that fails no chosen facet is a hit and counts everywhere; one that fails exactly one counts in that one only,
 * so that choosing a board still shows what the other boards would give.
 */
final class Scan {
    private final PieceQuery query;
    private final IndexSearcher searcher;
    private final ColumnCache cache;
    private final Order order;
    private final List<RangeTest> ranges = new ArrayList<>();
    private final List<Facet> narrowed;
    private final FacetTally tally = new FacetTally();
    private long total;
    private int current;

    private record RangeTest(int which, Span span) {}

    /** What was found. */
    record Found(long total, TopDocs top, FacetTally tally) {}

    private Scan(PieceQuery query, IndexSearcher searcher, ColumnCache cache) {
        this.query = query;
        this.searcher = searcher;
        this.cache = cache;
        this.order = query.order();
        this.narrowed = List.copyOf(query.chosen().keySet());
        range(PieceNumbers.DIPS, query.dips());
        range(PieceNumbers.LENGTH, query.lengthCm());
        range(PieceNumbers.WIDTH, query.widthCm());
        range(PieceNumbers.PRICE, query.price());
    }

    private void range(int which, Span span) {
        if (span != null) {
            ranges.add(new RangeTest(which, span));
        }
    }

    /** @param words to be found; null for every piece */
    static Found of(PieceQuery query, Query words, IndexSearcher searcher, ColumnCache cache) throws IOException {
        return new Scan(query, searcher, cache).run(words);
    }

    private Found run(Query words) throws IOException {
        int pieces = Math.max(1, searcher.getIndexReader().maxDoc());
        int wanted = (int) Math.min(pieces, (long) query.page() * query.size());
        TopFieldCollector top =
                new TopFieldCollectorManager(Sorts.of(order), wanted, null, Integer.MAX_VALUE).newCollector();
        Weight weight = words == null
                ? null
                : searcher.createWeight(
                        searcher.rewrite(words),
                        order == Order.RELEVANCE ? ScoreMode.COMPLETE : ScoreMode.COMPLETE_NO_SCORES,
                        1);
        for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
            segment(leaf, weight, top);
        }
        return new Found(total, top.topDocs(), tally);
    }

    private void segment(LeafReaderContext leaf, Weight weight, TopFieldCollector top) throws IOException {
        Scorer scorer = weight == null ? null : weight.scorer(leaf);
        if (weight != null && scorer == null) {
            return;
        }
        Columns columns = cache.of(leaf.reader());
        Bits live = leaf.reader().getLiveDocs();
        boolean[][] accepted = accepted(columns);
        int[][] counts = counts(columns);
        Columns.Values[] values = new Columns.Values[counts.length];
        for (Facet facet : Facet.values()) {
            values[facet.ordinal()] = columns.facets.get(facet);
        }
        ColourMatch colour = query.colour() == null
                ? null
                : new ColourMatch(query.colour(), query.within(), query.share(), order != Order.COLOUR);
        LeafCollector collector = top.getLeafCollector(leaf);
        collector.setScorer(scorable(scorer, colour));
        DocIdSetIterator each =
                scorer == null ? DocIdSetIterator.all(leaf.reader().maxDoc()) : scorer.iterator();
        for (int doc = each.nextDoc(); doc != DocIdSetIterator.NO_MORE_DOCS; doc = each.nextDoc()) {
            if (live != null && !live.get(doc) || !inRanges(columns, doc)) {
                continue;
            }
            int failed = failed(values, accepted, doc);
            if (failed == SEVERAL || colour != null && !colour.matches(columns, doc)) {
                continue;
            }
            if (failed == NONE) {
                total++;
                current = doc;
                collector.collect(doc);
                for (int facet = 0; facet < counts.length; facet++) {
                    count(values[facet], counts[facet], doc);
                }
            } else {
                int facet = narrowed.get(failed).ordinal();
                count(values[facet], counts[facet], doc);
            }
        }
        for (Facet facet : Facet.values()) {
            tally.add(facet, values[facet.ordinal()], counts[facet.ordinal()]);
        }
    }

    private static void count(Columns.Values values, int[] counts, int doc) {
        int[] ordinals = values.ordinals();
        int end = values.start()[doc + 1];
        for (int i = values.start()[doc]; i < end; i++) {
            counts[ordinals[i]]++;
        }
    }

    private static int[][] counts(Columns columns) {
        Facet[] facets = Facet.values();
        int[][] counts = new int[facets.length][];
        for (Facet facet : facets) {
            counts[facet.ordinal()] = new int[columns.facets.get(facet).values().length];
        }
        return counts;
    }

    private boolean[][] accepted(Columns columns) {
        boolean[][] accepted = new boolean[narrowed.size()][];
        for (int i = 0; i < accepted.length; i++) {
            Set<String> chosen = new HashSet<>();
            query.chosen(narrowed.get(i)).forEach(value -> chosen.add(FacetValues.folded(value)));
            PieceFacets.Value[] values = columns.facets.get(narrowed.get(i)).values();
            accepted[i] = new boolean[values.length];
            for (int ord = 0; ord < values.length; ord++) {
                accepted[i][ord] = chosen.contains(FacetValues.folded(values[ord].value()));
            }
        }
        return accepted;
    }

    private boolean inRanges(Columns columns, int doc) {
        for (RangeTest test : ranges) {
            if (!test.span()
                    .overlaps(columns.ranges[2 * test.which()][doc], columns.ranges[2 * test.which() + 1][doc])) {
                return false;
            }
        }
        if (query.finished() == null) {
            return true;
        }
        double low = columns.ranges[2 * PieceNumbers.DAYS][doc];
        double high = columns.ranges[2 * PieceNumbers.DAYS + 1][doc];
        LocalDate from = query.finished().from();
        LocalDate to = query.finished().to();
        return !Double.isNaN(low)
                && (from == null || high >= from.toEpochDay())
                && (to == null || low <= to.toEpochDay());
    }

    private static final int NONE = -1;
    private static final int SEVERAL = -2;

    /** Which of the narrowed facets the piece fails: {@link #NONE}, the index of the only one, or {@link #SEVERAL}. */
    private static int failedOr(int failed, int next) {
        return failed == NONE ? next : SEVERAL;
    }

    private int failed(Columns.Values[] values, boolean[][] accepted, int doc) {
        int failed = NONE;
        for (int i = 0; i < accepted.length && failed != SEVERAL; i++) {
            Columns.Values of = values[narrowed.get(i).ordinal()];
            boolean fits = false;
            int end = of.start()[doc + 1];
            for (int at = of.start()[doc]; at < end && !fits; at++) {
                fits = accepted[i][of.ordinals()[at]];
            }
            failed = fits ? failed : failedOr(failed, i);
        }
        return failed;
    }

    /** The score: of the words, or nearness of the colour, or nothing where neither orders the results. */
    private Scorable scorable(Scorer scorer, ColourMatch colour) {
        return new Scorable() {
            @Override
            public float score() throws IOException {
                if (order == Order.COLOUR) {
                    return (float) (1 / (1 + colour.distance));
                }
                return order == Order.RELEVANCE && scorer != null ? scorer.score() : 0;
            }

            @Override
            public int docID() {
                return current;
            }
        };
    }
}
