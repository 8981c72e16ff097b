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
import tenterbook.search.question.Lexicon;

/** The columns of every open segment, made once for each (a segment never changes) and dropped when it is closed. */
public final class ColumnCache {
    private final Map<IndexReader.CacheKey, Columns> kept = new ConcurrentHashMap<>();
    private final FacetTerms terms;
    private volatile Named lexicon;

    /** A lexicon, and of which terms it was made. */
    private record Named(FacetTerms.Term[] terms, Lexicon lexicon) {}

    public ColumnCache(List<Facet> facets) {
        this.terms = new FacetTerms(facets);
    }

    FacetTerms terms() {
        return terms;
    }

    /** The names that the archive uses, as of now. */
    Lexicon lexicon() {
        FacetTerms.Term[] now = terms.all();
        Named known = lexicon;
        if (known == null || known.terms() != now) {
            known = new Named(now, new Lexicon(now));
            lexicon = known;
        }
        return known.lexicon();
    }

    /** The columns of a segment with its colours in order, which takes some ten times as long as the columns alone. */
    public void warm(LeafReader reader) {
        of(reader).orderColours();
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
