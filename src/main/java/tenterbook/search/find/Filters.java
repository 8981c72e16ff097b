package tenterbook.search.find;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.lucene.util.FixedBitSet;
import tenterbook.search.facet.FacetColumn;
import tenterbook.search.facet.FacetTerms;
import tenterbook.search.index.PieceNumbers;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.Span;

/**
 * The ranges and facet values a search asks for.
 *
 * <p>A piece that fails no chosen facet is a hit and counts everywhere; one that fails exactly one counts in that one only,
 * so that choosing a board still shows what the other boards would give.
 */
final class Filters {
    private final PieceQuery query;
    private final List<RangeTest> ranges = new ArrayList<>();
    private final List<Facet> narrowed;
    private final FacetTerms.Term[] terms;
    /** By number of the term: a bit for the place of its facet among the narrowed ones, where it was chosen; else 0. */
    private final int[] accepted;

    private record RangeTest(int which, Span span) {}

    Filters(PieceQuery query, FacetTerms.Term[] terms) {
        this.query = query;
        this.narrowed = List.copyOf(query.chosen().keySet());
        this.terms = terms;
        range(PieceNumbers.DIPS, query.dips());
        range(PieceNumbers.LENGTH, query.lengthCm());
        range(PieceNumbers.WIDTH, query.widthCm());
        range(PieceNumbers.PRICE, query.price());
        this.accepted = new int[narrowed.isEmpty() ? 0 : terms.length];
        for (int i = 0; i < narrowed.size(); i++) {
            Set<String> chosen = new HashSet<>();
            query.chosen(narrowed.get(i)).forEach(value -> chosen.add(FacetValues.folded(value)));
            for (int term = 0; term < terms.length; term++) {
                if (terms[term].facet().equals(narrowed.get(i)) && chosen.contains(terms[term].folded())) {
                    accepted[term] = 1 << i;
                }
            }
        }
    }

    private void range(int which, Span span) {
        if (span != null) {
            ranges.add(new RangeTest(which, span));
        }
    }

    /** Takes away from {@code documents} what is outside a range. */
    void ranges(Columns columns, FixedBitSet documents) {
        if (ranges.isEmpty() && query.finished() == null) {
            return;
        }
        int length = documents.length();
        for (int doc = documents.nextSetBit(0); doc < length; ) {
            if (!inRanges(columns, doc)) {
                documents.clear(doc);
            }
            doc = doc + 1 < length ? documents.nextSetBit(doc + 1) : Integer.MAX_VALUE;
        }
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
        return !Double.isNaN(low) && ConstraintFilter.overlaps(query.finished(), low, high);
    }

    /** Takes away from {@code documents} what fails a facet, and counts what fails one only. */
    void facets(FacetColumn column, FixedBitSet documents, int[] counts) {
        if (narrowed.isEmpty()) {
            return;
        }
        int all = (1 << narrowed.size()) - 1;
        int length = documents.length();
        for (int doc = documents.nextSetBit(0); doc < length; ) {
            int fits = 0;
            int end = column.start()[doc + 1];
            for (int i = column.start()[doc]; i < end; i++) {
                fits |= accepted[column.values()[i]];
            }
            if (fits != all) {
                documents.clear(doc);
                int failed = all & ~fits;
                if ((failed & failed - 1) == 0) {
                    countOnly(narrowed.get(Integer.numberOfTrailingZeros(failed)), column, doc, counts);
                }
            }
            doc = doc + 1 < length ? documents.nextSetBit(doc + 1) : Integer.MAX_VALUE;
        }
    }

    private void countOnly(Facet facet, FacetColumn column, int doc, int[] counts) {
        int end = column.start()[doc + 1];
        for (int i = column.start()[doc]; i < end; i++) {
            int value = column.values()[i];
            if (terms[value].facet().equals(facet)) {
                counts[value]++;
            }
        }
    }
}
