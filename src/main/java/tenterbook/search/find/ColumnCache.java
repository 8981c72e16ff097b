package tenterbook.search.find;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.LeafReader;
import tenterbook.search.facet.FacetTerms;
import tenterbook.search.query.Facet;

/** The columns of every open segment, made once for each (a segment never changes) and dropped when it is closed. */
public final class ColumnCache {
    private final Map<IndexReader.CacheKey, Columns> kept = new ConcurrentHashMap<>();
    private final FacetTerms terms;

    public ColumnCache(List<Facet> facets) {
        this.terms = new FacetTerms(facets);
    }

    FacetTerms terms() {
        return terms;
    }

    public Columns of(LeafReader reader) {
        IndexReader.CacheHelper core = reader.getCoreCacheHelper();
        return kept.computeIfAbsent(core.getKey(), key -> {
            core.addClosedListener(kept::remove);
            try {
                return new Columns(reader, terms);
            } catch (IOException e) {
                throw new UncheckedIOException("The search index cannot be read; rebuild it with ‘reindex’", e);
            }
        });
    }
}
