package tenterbook.search.facet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tenterbook.search.index.PieceFacets;
import tenterbook.search.query.Facet;
import tenterbook.search.query.FacetValues;

/**
 * One number for each value of a facet, over all segments, so that counts need no words. Only grows; a value that no piece has any more
 * has a count of 0 and is dropped with the generation. Safe for many threads.
 */
public final class FacetTerms {
    /** @param folded {@link FacetValues#folded} of the value */
    public record Term(Facet facet, PieceFacets.Value value, String folded) {}

    private final List<Facet> facets;
    private final Map<Facet, Map<String, Integer>> numbers = new HashMap<>();
    private final List<Term> terms = new ArrayList<>();
    private volatile Term[] all = {};

    /** @param facets every one that the index holds */
    public FacetTerms(List<Facet> facets) {
        this.facets = facets;
    }

    public List<Facet> facets() {
        return facets;
    }

    /** The number of a term of the index. */
    public synchronized int number(Facet facet, String term) {
        return numbers.computeIfAbsent(facet, of -> new HashMap<>()).computeIfAbsent(term, of -> {
            PieceFacets.Value value = PieceFacets.Value.of(of);
            terms.add(new Term(facet, value, FacetValues.folded(value.value())));
            return terms.size() - 1;
        });
    }

    /** Every term by its number; at least all that any segment seen before holds. */
    public Term[] all() {
        Term[] now = all;
        synchronized (this) {
            if (now.length < terms.size()) {
                now = terms.toArray(new Term[0]);
                all = now;
            }
        }
        return now;
    }
}
