package tenterbook.search.find;

import java.io.IOException;
import java.util.List;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.search.BulkScorer;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.LeafCollector;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.Weight;
import org.apache.lucene.util.Bits;
import org.apache.lucene.util.FixedBitSet;
import tenterbook.search.facet.FacetTally;
import tenterbook.search.facet.FacetTerms;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.PieceQuery;

/**
 * Which pieces a search finds, and all facet counts: words by Lucene into a set of bits, everything else by the columns. Only then
 * {@link Ordering} looks for the first ones.
 */
final class Scan {
    private final IndexSearcher searcher;
    private final ColumnCache cache;
    private final ColourSearch colours;
    private final Filters narrowing;
    private final ConstraintFilter constraints;
    private final FacetTally tally;

    /**
     * What was found.
     *
     * @param hits by number of the segment; null for none
     */
    record Found(long total, FixedBitSet[] hits, FacetTally tally) {}

    private Scan(
            PieceQuery query,
            List<Constraint> constraints,
            ColourSearch colours,
            IndexSearcher searcher,
            ColumnCache cache) {
        this.searcher = searcher;
        this.cache = cache;
        this.colours = colours;
        FacetTerms.Term[] terms = cache.terms().all();
        this.narrowing = new Filters(query, terms);
        this.constraints = new ConstraintFilter(constraints, terms);
        this.tally = new FacetTally(terms);
    }

    /**
     * @param constraints what the question asks besides its words
     * @param words to be found; null for every piece
     * @param colours null where none are asked for
     */
    static Found of(
            PieceQuery query,
            List<Constraint> constraints,
            Query words,
            ColourSearch colours,
            IndexSearcher searcher,
            ColumnCache cache)
            throws IOException {
        // Every segment's columns first, so that every term of theirs has its number.
        searcher.getIndexReader().leaves().forEach(leaf -> cache.of(leaf.reader()));
        return new Scan(query, constraints, colours, searcher, cache).run(words);
    }

    private Found run(Query words) throws IOException {
        List<LeafReaderContext> leaves = searcher.getIndexReader().leaves();
        Weight weight =
                words == null ? null : searcher.createWeight(searcher.rewrite(words), ScoreMode.COMPLETE_NO_SCORES, 1);
        List<SegmentResult> parts = Segments.each(leaves, leaf -> segment(leaf, weight));
        FixedBitSet[] hits = new FixedBitSet[leaves.size()];
        long total = 0;
        for (LeafReaderContext leaf : leaves) {
            SegmentResult part = parts.get(leaf.ord);
            tally.add(part.counts);
            int count = part.found == null ? 0 : part.found.cardinality();
            hits[leaf.ord] = count == 0 ? null : part.found;
            total += count;
        }
        return new Found(total, hits, tally);
    }

    /** What was found in one segment, and how often each facet value occurs in it. */
    private record SegmentResult(FixedBitSet found, int[] counts) {}

    private SegmentResult segment(LeafReaderContext leaf, Weight weight) throws IOException {
        FixedBitSet found = words(leaf, weight);
        int[] counts = tally.none();
        if (found == null) {
            return new SegmentResult(null, counts);
        }
        Columns columns = cache.of(leaf.reader());
        constraints.apply(columns, found);
        narrowing.ranges(columns, found);
        if (colours != null) {
            colours.another().narrow(leaf, columns, found);
        }
        narrowing.facets(columns.facets, found, counts);
        columns.facets.count(found, counts);
        return new SegmentResult(found, counts);
    }

    private static FixedBitSet words(LeafReaderContext leaf, Weight weight) throws IOException {
        FixedBitSet found = new FixedBitSet(leaf.reader().maxDoc());
        Bits live = leaf.reader().getLiveDocs();
        if (weight != null) {
            BulkScorer scorer = weight.bulkScorer(leaf);
            if (scorer == null) {
                return null;
            }
            scorer.score(new Into(found), live, 0, DocIdSetIterator.NO_MORE_DOCS);
            return found;
        }
        found.set(0, found.length());
        if (live != null) {
            for (int doc = 0; doc < found.length(); doc++) {
                if (!live.get(doc)) {
                    found.clear(doc);
                }
            }
        }
        return found;
    }

    private record Into(FixedBitSet found) implements LeafCollector {
        @Override
        public void setScorer(Scorable scorer) {
            // No score is asked for.
        }

        @Override
        public void collect(int doc) {
            found.set(doc);
        }
    }
}
