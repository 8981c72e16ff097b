package tenterbook.search.find;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.FieldDoc;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.QueryRescorer;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TopDocs;
import org.apache.lucene.search.TopFieldCollectorManager;
import org.apache.lucene.search.TotalHits;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.FixedBitSet;
import tenterbook.search.colour.NearestDistances;
import tenterbook.search.index.PieceDocument;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Order;

/** The first of the pieces found, in the order asked for; only as much is scored or compared as that takes. */
final class Ordering {
    /** Among so many of the best by their words, those with the words in a row come first. */
    private static final int ROW_AMONG = 1000;

    private final IndexSearcher searcher;
    private final ColumnCache cache;
    private final FixedBitSet[] hits;
    private final int wanted;

    /** @param hits by number of the segment; null for none */
    Ordering(IndexSearcher searcher, ColumnCache cache, FixedBitSet[] hits, int wanted) {
        this.searcher = searcher;
        this.cache = cache;
        this.hits = hits;
        this.wanted = wanted;
    }

    /** By an order that does not depend on the search. Documents of the whole index. */
    int[] by(Order order) throws IOException {
        var top = new TopFieldCollectorManager(Sorts.of(order), wanted, null, Integer.MAX_VALUE);
        return documents(searcher.search(new BitsQuery(hits), top).scoreDocs);
    }

    private static int[] documents(ScoreDoc[] top) {
        return Arrays.stream(top).mapToInt(each -> each.doc).toArray();
    }

    /** Best match of words first; what has no weight at all last, by number. */
    int[] byWords(TextQuery words) throws IOException {
        Query weighing = words.weighing();
        Query query = !words.comparesPlaces()
                ? weighing
                : new BooleanQuery.Builder()
                        .add(weighing, Occur.MUST)
                        .add(new BitsQuery(hits), Occur.FILTER)
                        .build();
        Optional<Query> row = words.row();
        int considered = row.isPresent() ? Math.max(wanted, ROW_AMONG) : wanted;
        ScoreDoc[] best = searcher.search(query, new OnlyHits(hits, considered)).scoreDocs;
        int[] top = row.isPresent() ? rowsFirst(best, row.get()) : documents(best);
        return top.length == wanted ? top : filled(top);
    }

    /** The best again, with what the row weighs in each added to its weight. */
    private int[] rowsFirst(ScoreDoc[] best, Query row) throws IOException {
        ScoreDoc[] weighed = new ScoreDoc[best.length];
        Map<Integer, Integer> places = new HashMap<>();
        for (int i = 0; i < best.length; i++) {
            weighed[i] = new ScoreDoc(best[i].doc, (float) ((FieldDoc) best[i]).fields[0]);
            places.put(best[i].doc, i);
        }
        TopDocs before = new TopDocs(new TotalHits(best.length, TotalHits.Relation.EQUAL_TO), weighed);
        return Arrays.stream(QueryRescorer.rescore(searcher, before, row, 1, best.length).scoreDocs)
                .sorted(Comparator.comparingDouble((ScoreDoc each) -> -each.score)
                        .thenComparing(each -> places.get(each.doc)))
                .limit(wanted)
                .mapToInt(each -> each.doc)
                .toArray();
    }

    private int[] filled(int[] top) throws IOException {
        List<LeafReaderContext> leaves = searcher.getIndexReader().leaves();
        FixedBitSet[] others = new FixedBitSet[hits.length];
        for (int i = 0; i < hits.length; i++) {
            others[i] = hits[i] == null ? null : hits[i].clone();
        }
        for (int doc : top) {
            LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(doc, leaves));
            others[leaf.ord].clear(doc - leaf.docBase);
        }
        int[] rest = new Ordering(searcher, cache, others, wanted - top.length).by(Order.NUMBER);
        return IntStream.concat(Arrays.stream(top), Arrays.stream(rest)).toArray();
    }

    /** Nearest to the numbers asked for first, then by number. */
    int[] byNearness(Constraint.OfNumber asked) {
        List<NearestDistances.Near> all = new ArrayList<>();
        for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
            Columns columns = cache.of(leaf.reader());
            FixedBitSet found = hits[leaf.ord];
            for (int doc = 0; found != null && doc < found.length(); doc++) {
                if (found.get(doc)) {
                    all.add(new NearestDistances.Near(
                            ConstraintFilter.distance(asked, columns, doc), leaf.docBase + doc));
                }
            }
        }
        return first(all);
    }

    private int[] first(List<NearestDistances.Near> near) {
        double[] distances = near.stream()
                .mapToDouble(NearestDistances.Near::distance)
                .sorted()
                .toArray();
        double last = distances.length <= wanted ? Double.POSITIVE_INFINITY : distances[wanted - 1];
        return near.stream()
                .filter(each -> each.distance() <= last)
                .sorted(Comparator.comparingDouble(NearestDistances.Near::distance)
                        .thenComparing(each -> number(each.doc())))
                .limit(wanted)
                .mapToInt(NearestDistances.Near::doc)
                .toArray();
    }

    /** Nearest colours first. */
    int[] byColour(ColourSearch colours) throws IOException {
        NearestDistances nearest = new NearestDistances(wanted, colours.limit());
        Segments.each(searcher.getIndexReader().leaves(), leaf -> {
            if (hits[leaf.ord] != null) {
                colours.another().nearest(cache.of(leaf.reader()), hits[leaf.ord], leaf.docBase, nearest);
            }
            return leaf;
        });
        return first(nearest.all());
    }

    private BytesRef number(int doc) {
        try {
            List<LeafReaderContext> leaves = searcher.getIndexReader().leaves();
            LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(doc, leaves));
            SortedDocValues numbers = DocValues.getSorted(leaf.reader(), PieceDocument.SORT_NUMBER);
            return numbers.advanceExact(doc - leaf.docBase)
                    ? BytesRef.deepCopyOf(numbers.lookupOrd(numbers.ordValue()))
                    : new BytesRef();
        } catch (IOException e) {
            throw new UncheckedIOException("The search index cannot be read; rebuild it with ‘reindex’", e);
        }
    }
}
